// Where a `use` line leads: to a file inside the workspace, or to a reason why not. Text only; nothing is looked up.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { folderOf, resolveUse } from '../../server/model/index.ts';

const cases: readonly (readonly [from: string, use: string, root: string, path: string])[] = [
  ['/w/sites/a.gate', '../library/drives.gate', '/w', '/w/library/drives.gate'],
  ['/w/sites/a.gate', 'b.gate', '/w', '/w/sites/b.gate'],
  ['/w/sites/a.gate', './b.gate', '/w', '/w/sites/b.gate'],
  ['/w/sites/a.gate', './/../library/./x.gate', '/w', '/w/library/x.gate'],
  ['/w/sites/deep/a.gate', '../../x.gate', '/w/', '/w/x.gate'],
  ['/w/a.gate', 'library/../library/x.gate', '/w', '/w/library/x.gate'],
  ['/a.gate', 'library/x.gate', '/', '/library/x.gate'],
  ['/a.gate', 'library/x.gate', '', '/library/x.gate'],
  ['file:///w/sites/a.gate', '../library/x.gate', 'file:///w', 'file:///w/library/x.gate'],
  ['vscode-vfs://github/o/r/sites/a.gate', '../x.gate', 'vscode-vfs://github/o/r', 'vscode-vfs://github/o/r/x.gate'],
  ['c:/w/sites/a.gate', '../x.gate', 'c:/w', 'c:/w/x.gate'],
  ['/w/a.gate', 'name with spaces.gate', '/w', '/w/name with spaces.gate'],
  ['/w/a.gate', 'a.gate.gate', '/w', '/w/a.gate.gate'],
  ['/w/a.gate', '...', '/w', '/w/...'],
];
test.each(cases)('%s uses %j: inside %s it is %s', (from, use, root, path) => {
  expect(resolveUse(from, use, root)).toEqual({ path });
});

const faults: readonly (readonly [from: string, use: string, root: string, fault: string])[] = [
  ['/w/a.gate', '../x.gate', '/w', 'outside'],
  ['/w/sites/a.gate', '../../x.gate', '/w', 'outside'],
  ['/w/sites/a.gate', '../../w/x.gate', '/w', 'outside'],
  ['/w/sites/a.gate', 'b/../../../x.gate', '/w', 'outside'],
  ['/w/a.gate', '..', '/w', 'outside'],
  ['/world/a.gate', 'x.gate', '/w', 'outside'],
  ['/elsewhere/a.gate', 'x.gate', '/w', 'outside'],
  ['file:///w/a.gate', '../x.gate', 'file:///w', 'outside'],
  ['file:///w/a.gate', '../../../../etc/passwd', 'file:///w', 'outside'],
  ['/w/a.gate', '/w/x.gate', '/w', 'absolute'],
  ['/w/a.gate', '/etc/passwd', '/w', 'absolute'],
  ['/w/a.gate', '//server/share/x.gate', '/w', 'absolute'],
  ['/w/a.gate', 'c:/x.gate', '/w', 'absolute'],
  ['/w/a.gate', 'file:///w/x.gate', '/w', 'absolute'],
  ['/w/a.gate', 'https://example.org/x.gate', '/w', 'absolute'],
  ['/w/a.gate', 'library\\x.gate', '/w', 'backslash'],
  ['/w/a.gate', 'c:\\x.gate', '/w', 'backslash'],
  ['/w/a.gate', '..\\..\\x.gate', '/w', 'backslash'],
  ['/w/a.gate', '', '/w', 'empty'],
  ['/w/a.gate', '  ', '/w', 'empty'],
  ['/w/a.gate', 'a.gate', '/w', 'itself'],
  ['/w/s/a.gate', '../s/./a.gate', '/w', 'itself'],
];
test.each(faults)('%s uses %j: inside %s it leads nowhere (%s)', (from, use, root, fault) => {
  expect(resolveUse(from, use, root)).toEqual({ fault });
});

describe('whatever is used', () => {
  const part = fc.constantFrom('..', '.', '', 'a', 'b.gate', ' ', '…', 'c d', '%2e%2e');
  const root = fc.constantFrom('/w', '/w/', '/', '', 'file:///w', 'c:/w', 'vscode-vfs://github/o/r');
  test('it stays inside the root, with no dots left in it', () => {
    fc.assert(
      fc.property(fc.array(part, { maxLength: 8 }), fc.array(fc.constantFrom('s', 't'), { maxLength: 3 }), root, (parts, folders, of) => {
        const inside = of.endsWith('/') ? of.slice(0, -1) : of;
        const target = resolveUse([inside, ...folders, 'from.gate'].join('/'), parts.join('/'), of);
        if (!('path' in target)) return;
        // The root itself is no file, and is inside.
        if (target.path === inside) return;
        expect(target.path.startsWith(inside + '/')).toBe(true);
        expect(
          target.path
            .slice(inside.length + 1)
            .split('/')
            .every((piece) => piece !== '..' && piece !== '.' && piece !== ''),
        ).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
  test('it is what the rules for URLs make of it', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('..', '.', 'a', 'b'), { minLength: 1, maxLength: 8 }), (parts) => {
        const use = [...parts, 'x.gate'].join('/');
        const target = resolveUse('/w/s/t/u/v/from.gate', use, '');
        // Node's own URL clamps at the root where we say "outside"; below it both must agree.
        if ('path' in target) expect(target.path).toBe(new URL(use, 'file:///w/s/t/u/v/from.gate').pathname);
      }),
    );
  });
});

test('the folder of a path', () => {
  expect(folderOf('/w/s/a.gate')).toBe('/w/s');
  expect(folderOf('/a.gate')).toBe('');
  expect(folderOf('a.gate')).toBe('');
});

// Every kind of problem that can be found has a rule that explains it, and is found somewhere. That a rule explains a kind that
// there is, the types say.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { allRules } from '../../server/rules/index.ts';
import { root } from '../kit/pages.ts';

/** Where the kinds are declared, each with what its rule is told. */
const declaring = ['grammar/tree.ts', 'server/vocabulary/problems.ts', 'server/model/problems.ts', 'server/rules/problems.ts'];

const kinds = declaring.flatMap((source) => {
  const declared = [...readFileSync(join(root, source), 'utf8').matchAll(/^ {2}readonly '([a-z-]+)':/gm)];
  return declared.map(([, kind]) => kind as string);
});

/** The sources that find problems, as one text. */
const finding = ['grammar', 'server/vocabulary', 'server/model', 'server/rules']
  .flatMap((folder) => readdirSync(join(root, folder)).map((file) => `${folder}/${file}`))
  .filter((path) => path.endsWith('.ts'))
  .map((path) => readFileSync(join(root, path), 'utf8').replaceAll(/^ {2}readonly '.*/gm, ''))
  .join('\n');

test('every kind of problem has a rule that explains it', () => {
  expect(kinds.length).toBeGreaterThan(40);
  const explaining = allRules.flatMap((rule) => (rule.kind === 'problem' ? [rule.name as string] : []));
  expect(explaining.toSorted()).toEqual(kinds.toSorted());
});

test.each(kinds)('%s is found somewhere', (kind) => expect(finding).toContain(`'${kind}'`));

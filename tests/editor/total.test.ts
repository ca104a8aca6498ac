// No text and no place in it brings a feature down.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from '../../grammar/index.ts';
import {
  acceptance,
  completion,
  definition,
  dependencesAt,
  dependents,
  diagnostics,
  foldings,
  formatting,
  highlight,
  hover,
  indexOf,
  inlayValues,
  lenses,
  links,
  mentionsOf,
  missingLines,
  prepareRename,
  rangeFormatting,
  renaming,
  selectionAt,
  signature,
  sources,
  symbols,
  tokens,
  typedFormatting,
  usesAfter,
} from '../../server/editor/index.ts';
import { figuresShown, fixes, safeFixes, withEdits } from '../../server/engine/index.ts';
import { asOf, bench, library, site } from './bench.ts';

const pieces = [
  '{',
  '}',
  '"',
  '#',
  '\n',
  '\r\n',
  ' ',
  '±',
  '..',
  ':',
  ',',
  '𝄞',
  '\ud800',
  'leaf ',
  'wire ',
  'to ',
  'use "',
  'accept ',
  '8.2 kohm',
  'panel-model x {',
  'constructor',
  '__proto__',
  'toString ',
];
const cut = fc.tuple(fc.nat(), fc.nat(80), fc.constantFrom(...pieces, ''));
const texts = fc
  .tuple(fc.constantFrom(site(), ...library.values()), fc.array(cut, { maxLength: 8 }))
  .map(([text, cuts]) =>
    cuts.reduce((now, [at, length, put]) => now.slice(0, at % (now.length + 1)) + put + now.slice((at % (now.length + 1)) + length), text),
  );

test('every feature answers everywhere in any text', () => {
  fc.assert(
    fc.property(texts, fc.array(fc.nat(), { minLength: 1, maxLength: 6 }), (text, places) => {
      const { analysis, textOf, workspace } = bench(text);
      const inside = (place: { readonly start: number; readonly end: number }): void => {
        expect(place.start).toBeGreaterThanOrEqual(0);
        expect(place.end).toBeGreaterThanOrEqual(place.start);
        expect(place.end).toBeLessThanOrEqual(text.length);
      };
      for (const place of places) {
        const offset = place % (text.length + 1);
        const offered = completion(analysis, offset, { libraries: [...library.keys()] });
        inside(offered.replace);
        for (const item of offered.items.slice(0, 5)) expect(typeof item.documentation()).toBe('string');
        const found = hover(analysis, offset, textOf);
        if (found !== undefined) inside(found);
        const target = definition(analysis, offset);
        if (target !== undefined) inside(target.from);
        highlight(analysis, offset).forEach(inside);
        inside(offered.insert);
        const shown = signature(analysis, offset);
        if (shown !== undefined) expect(shown.parameters[shown.active]).toBeDefined();
        const renamed = prepareRename(analysis, offset);
        if ('refused' in renamed) expect(renamed.refused).toMatch(/\.$/);
        else {
          inside(renamed);
          const work = renaming({
            target: renamed,
            newName: 'fresh-name',
            files: [analysis],
            read: (path) => ({ text: textOf(path) ?? '' }),
            root: '/site',
          });
          for (let step = work.next(); ; step = work.next()) {
            if (step.done !== true) continue;
            if ('files' in step.value) step.value.files.flatMap((file) => file.edits).forEach(inside);
            break;
          }
        }
        for (const key of ['}', '\n']) typedFormatting(analysis, offset, key).forEach(inside);
        const ranged = rangeFormatting(text, { start: Math.min(offset, (places[0] as number) % (text.length + 1)), end: offset });
        if ('edits' in ranged) ranged.edits.forEach(inside);
        const lacking = missingLines(analysis, offset);
        if (lacking !== undefined) inside(lacking.edit);
        let before: { readonly start: number; readonly end: number } | undefined;
        for (const step of selectionAt(analysis, offset)) {
          inside(step);
          if (before !== undefined)
            expect(step.start <= before.start && step.end >= before.end && step.end - step.start > before.end - before.start).toBe(true);
          before = step;
        }
        const judge = (changed: string) => workspace.judging(analysis.path, changed, asOf);
        const [fact, figure] = dependencesAt(analysis, offset);
        // Each is a dozen verdicts: at one place only.
        if (place !== places[0]) continue;
        for (const steps of [
          ...(fact === undefined ? [] : [dependents(analysis, fact, judge)]),
          ...(figure === undefined ? [] : [sources(analysis, figure, judge)]),
        ])
          for (let count = 0; count < 600; count++) {
            const step = steps.next();
            if (step.done !== true) continue;
            step.value.forEach((node) => inside(node.at));
            break;
          }
        fixes(analysis, { start: offset, end: offset });
      }
      diagnostics(analysis).forEach(inside);
      mentionsOf(analysis).forEach(inside);
      for (const value of inlayValues(analysis)) {
        inside({ start: value.offset, end: value.offset });
        expect(typeof value.tooltip()).toBe('string');
      }
      for (const symbol of symbols(analysis)) inside(symbol.whole);
      figuresShown(analysis);
      for (const edit of safeFixes(analysis)?.edits ?? []) inside(edit);
      for (const finding of analysis.findings.slice(0, 20)) {
        const form = acceptance(analysis, finding, asOf);
        if (form === undefined) continue;
        inside(form.edit);
        expect(parse(withEdits(text, [form.edit])).problems.length).toBeLessThanOrEqual(analysis.installation.reading.tree.problems.length);
      }
      usesAfter(
        '/site/gates/north.gate',
        text,
        [
          { from: '/site/library', to: '/site/shelf' },
          { from: '/site/gates', to: '/site/x' },
        ],
        '/site',
        () => '/site',
      ).forEach(inside);
      formatting(text);
      let end = 0;
      for (const token of tokens(analysis)) {
        inside(token);
        expect(token.start).toBeGreaterThanOrEqual(end);
        end = token.end;
      }
      foldings(analysis).forEach(inside);
      links(analysis).forEach(inside);
      for (const lens of lenses(analysis)) {
        inside(lens.at);
        expect(lens.title()).not.toBe('');
      }
      for (const symbol of indexOf(text)) inside(symbol.head);
    }),
    { numRuns: 400 },
  );
});

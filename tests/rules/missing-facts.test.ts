// Facts that a block lacks or has twice: what is missing is told once, and the editor is told which words would mend it.
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../server/rules/index.ts';
import { applyEdits, judge, pagePath } from '../kit/pages.ts';

const found = (rule: string, text: string, files?: ReadonlyMap<string, string>): readonly Finding[] =>
  judge(text, files).findings.filter((finding) => finding.rule === rule);
const whats = (rule: string, text: string): string[] => found(rule, text).map(({ what }) => what);

describe('a block that lacks a fact', () => {
  const rule = 'fact-missing';
  const swing = (lines: string): string => `language 1\nleaf west {\n  width 2 m\n  ${lines}\n}\n`;
  it('offers the word of the line, unless there are several that would do', () => {
    expect(found(rule, swing('opens inward 90 deg')).map(({ what, lacks }) => [what, lacks])).toEqual([
      ['The leaf “west” lacks “mass”.', ['mass']],
    ]);
    expect(found(rule, swing('mass 150 kg')).map(({ what, lacks, related }) => [what, lacks, related])).toEqual([
      ['The leaf “west” lacks “opens” or “slides”.', [], []],
    ]);
  });
  it('lacks it whatever else of it cannot be read, unless that is the line, or a word near to it', () => {
    expect(whats(rule, swing('opens inward 90 deg\n  height tall'))).toEqual(['The leaf “west” lacks “mass”.']);
    expect(whats(rule, swing('opens inward 90 deg\n  quaint 3'))).toEqual(['The leaf “west” lacks “mass”.']);
    expect(whats(rule, swing('opens inward 90 deg\n  mass heavy'))).toEqual([]);
    expect(whats(rule, swing('opens inward 90 deg\n  masss 150 kg'))).toEqual([]);
    expect(whats(rule, swing('mass 150 kg\n  slide left 4 m'))).toEqual([]);
  });
  it('is told of blocks in other blocks, at any depth', () => {
    expect(
      whats(rule, 'language 1\nuse "../library/panels.gate"\npanel main : rowan-pair {\n  battery {\n    voltage 24 V\n  }\n}\n'),
    ).toEqual(['This battery lacks “capacity”.']);
  });
  it('is told of a model once where it stands in the same file, and at the drive as well where it does not', () => {
    const model = 'drive-model bare {\n  kind rack\n}\n';
    const drive = 'drive push : bare {\n  moves slide\n}\n';
    expect(whats(rule, `language 1\n${model}${drive}`)).toEqual([
      'The drive-model “bare” lacks “speed”, which is needed because it is a rack drive.',
    ]);
    const library = new Map([[pagePath.replace('page.gate', 'bare.gate'), `language 1\n${model}`]]);
    const [finding, ...more] = found(rule, `language 1\nuse "bare.gate"\n${drive}`, library);
    expect(finding?.what).toBe('The model “bare” of “push” lacks “speed”, which is needed because it is a rack drive.');
    expect(finding?.related.map(({ message, path }) => [message, path?.split('/').at(-1)])).toEqual([['the model', 'bare.gate']]);
    expect(more).toEqual([]);
  });
  it('is not guessed of a drive whose model, or its kind, nobody knows', () => {
    expect(whats(rule, 'language 1\ndrive push : unheard-of {\n  moves slide\n}\n')).toEqual([]);
    expect(whats(rule, 'language 1\ndrive-model odd {\n  speed 0.2 m/s\n}\ndrive push : odd {\n  moves slide\n}\n')).toEqual([
      'The drive-model “odd” lacks “kind”.',
    ]);
  });
  it('points to the kind of a model in the same file', () => {
    const text =
      'language 1\ndrive-model odd {\n  kind linear-ram\n  stroke 300 mm\n  speed 16 mm/s\n}\ndrive push : odd {\n  moves west\n  leaf-bracket 780 mm\n}\n';
    expect(
      found(rule, text).flatMap(({ related }) => related.map(({ message, path, start, end }) => [message, path, text.slice(start, end)])),
    ).toEqual([['a linear ram, as its model says', undefined, 'kind linear-ram']]);
  });
});

describe('a fact that stands twice', () => {
  const rule = 'fact-repeated';
  const mended = (text: string): string =>
    applyEdits(
      text,
      found(rule, text).flatMap(({ fixes }) => fixes.flatMap(({ edits }) => edits)),
    );
  const of = (text: string): unknown[] =>
    found(rule, text).map(({ what, tag, fixes }) => [what.includes('with the same values'), tag, fixes.map(({ safe }) => safe)]);
  it('with the same values is not needed, and may be taken out without a look', () => {
    expect(of('language 1\nmotion {\n  seat 1 s\n  seat 1 s\n}\n')).toEqual([[true, 'unnecessary', [true]]]);
    expect(of('language 1\nmotion {\n  seat 1 s\n  seat 2 s\n}\n')).toEqual([[false, undefined, [false]]]);
    const closed = 'language 1\nmotion {\n  seat 1 s\n  seat 1 s }\n';
    expect(of(closed)).toEqual([[true, 'unnecessary', [true]]]);
    expect(mended(closed)).toBe('language 1\nmotion {\n  seat 1 s\n  }\n');
  });
  it.each([
    ['at the end of the line', 'testable\n}'],
    ['before a comment', 'testable # by its supply\n}'],
    ['right before one', 'testable# by its supply\n}'],
    ['at the end of the file', 'testable'],
    ['with other line ends', 'testable\r\n}'],
  ])('is a line of one word %s too', (_, last) => {
    expect(of(`language 1\nsensor-model siskin {\n  kind beam\n  testable\n  ${last}`)).toEqual([[true, 'unnecessary', [true]]]);
  });
  it('is taken out behind a brace too, where it stands as it would after formatting', () => {
    const text =
      'language 1\npanel-model heron {\n  supply 24 V\n  selector reply "Logic" {\n    option steps "in turns"\n  } supply 24 V\n}\n';
    expect(of(text)).toEqual([[true, 'unnecessary', [true]]]);
    expect(mended(text)).toBe(text.replace('} supply 24 V', '}'));
  });
  it('is, as a block, never taken out: each may say something that the other does not', () => {
    expect(of('language 1\nmotion {\n  seat 1 s\n}\nmotion {\n  seat 1 s\n}\n')).toEqual([[false, undefined, []]]);
    expect(of('language 1\nmotion {\n  seat 1 s\n}\nmotion{\n  seat 1 s\n}\n')).toEqual([[false, undefined, []]]);
  });
});

it('what the shape of a leaf lacks is told with the words that would say it', () => {
  const [finding] = found(
    'not-judged',
    'language 1\nuse "../library/drives.gate"\nleaf west {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n  hinge-gap 12 mm\n}\ndrive floor : birch-floor {\n  moves west\n}\n',
  );
  expect(finding?.what).toBe(
    'Not judged: the room behind the open leaf “west”, the hinge of “west”, the gap under “west”. “west” does not state “room-when-open”, “hinge-offset”, “thickness” and “ground-gap”.',
  );
  expect(finding?.lacks).toEqual(['room-when-open', 'hinge-offset', 'thickness', 'ground-gap']);
});

it('openings so large that no distance is known to be enough are told as that', () => {
  const [finding] = found(
    'hazard-uncovered',
    'language 1\nuse "../library/drives.gate"\nleaf slide {\n  width 5 m\n  mass 400 kg\n  slides left 4.8 m\n  infill-opening square 300 mm\n  passes post 60 mm\n}\ndrive rack : birch-rack {\n  moves slide\n}\n',
  );
  expect(finding?.what).toContain('there are 60 mm, where so large an opening needs far more: it shears an arm, a hand and a finger');
});

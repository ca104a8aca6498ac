// Writes SURVIVORS.md from the results of the last runs: the scores, and every survivor by its place and its kind.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { work } from './places.mjs';
import { scoreTable } from './tell.mjs';

const dead = (mutant) => mutant.status === 'killed' || mutant.status === 'timed out';
const number = /(?:1e-\d+|hair|slack|rounding|sameAngle|epsilon)\b/;

/** Why survivors of a kind survive; the first kind that fits counts. */
const kinds = [
  {
    name: 'not reached',
    fits: ({ status }) => status === 'not reached',
    why: 'No test reaches them. Most stand in what the compiler asks for, as the `[]` in `x === undefined ? [] : …` where x is known; some are code that wants an example.',
  },
  {
    name: 'guard',
    fits: ({ mutator, was, becomes }) =>
      mutator === 'OptionalChaining' ||
      (mutator === 'ConditionalExpression' &&
        ((/=== (?:undefined|null)/.test(was) && becomes === 'false') || (/!== (?:undefined|null)/.test(was) && becomes === 'true'))) ||
      (mutator === 'LogicalOperator' && /(?:===|!==) undefined/.test(was)) ||
      (mutator === 'ArrayDeclaration' && was === '[]') ||
      (mutator === 'LogicalOperator' && /\?\?/.test(was)),
    why: 'A guard against what is not there. Where another guard before it, or the one who calls, has seen to that already, it stands only because types cannot know it: the compiler refuses the file without it. Where the value behind it is then undefined, the comparison that follows is false as well, and nothing is said either way.',
  },
  {
    name: 'quick way',
    fits: ({ mutator, was, becomes }) =>
      mutator === 'ConditionalExpression' &&
      becomes === 'false' &&
      /length === 0|\.size === 0|unread\.length|=== 0$|tilt|clearance === 0/.test(was),
    why: 'A short cut for speed or for a plain case: without it the longer way gives the same.',
  },
  {
    name: 'hair',
    fits: ({ was }) => number.test(was),
    why: 'Allowances for rounding, many orders finer than anything that can be measured: more, less, or on the other side of the limit, no file can tell.',
  },
  {
    name: 'exact limit',
    fits: ({ mutator, was, becomes }) =>
      mutator === 'EqualityOperator' &&
      /[<>]/.test(was) &&
      was.replace(/[<>]=?/g, '') === becomes.replace(/[<>]=?/g, '') &&
      was.includes('<') === becomes.includes('<'),
    why: '`<` for `<=` or the like, between numbers that were worked out: it differs only where both are the same to the last digit, and the two branches meet there. Where a limit is stated, the margins and the pages hold it at its exact value.',
  },
  {
    name: 'search',
    fits: ({ path }) =>
      /figures\/(?:least-lag|linkage|articulated-arm|motion-profile|hinge-gap|overtravel|force-window|force-changes|edge-speed|linear-ram)\//.test(
        path,
      ),
    why: 'Grids, refinements and walks over samples. A worse start, one step more or a wider stretch finds the same greatest or least value to within the accuracy that the tests ask for, later or with a step in hand.',
  },
  {
    name: 'overlapping patterns',
    fits: ({ mutator, path }) => mutator === 'Regex' && path.endsWith('/secrets.ts'),
    why: 'What a secret looks like is told by several patterns: what a wider or narrower one takes or leaves, mostly another decides. The tests hold texts that are secrets and texts that are none.',
  },
  {
    name: 'pattern',
    fits: ({ mutator }) => mutator === 'Regex',
    why: 'Patterns for texts of which only some can come: the scanner has cut them already.',
  },
  {
    name: 'rest',
    fits: () => true,
    why: 'Not explained by their kind. Each is either the same in every file that can be written, or wants a test: begin here.',
  },
];

const results = JSON.parse(readFileSync(join(work, 'results.json'), 'utf8'));
const survivors = results.filter((mutant) => mutant.status !== undefined && !dead(mutant));
const kindOf = (mutant) => kinds.find((kind) => kind.fits(mutant));
const rooms = [...new Set(results.map((mutant) => mutant.kind))];
const count = (kind, room) => survivors.filter((mutant) => kindOf(mutant) === kind && mutant.kind === room).length;

const byPath = new Map();
for (const mutant of survivors) {
  if (!byPath.has(mutant.path)) byPath.set(mutant.path, new Map());
  const own = byPath.get(mutant.path);
  const { name } = kindOf(mutant);
  own.set(name, [...(own.get(name) ?? []), `${mutant.line}:${mutant.column}`]);
}

const text = `<!-- Written by \`node tests/mutation/survivors.mjs\` from the last results of \`npm run mutate\`. Do not edit. -->
# What the mutation tests leave alive

Each row of the lists below gives line:column of mutants that no test killed, by kind. What each of them changes stands in
\`tests/artifacts/mutation/survivors.md\` after a run. Kinds are told from the shape of a mutant; whoever lowers their
number looks at each, and a mutant may be better, or worse, than its kind.

## Kinds

| kind | ${rooms.join(' | ')} | why it survives |
|---|${rooms.map(() => '---').join('|')}|---|
${kinds.map((kind) => `| ${kind.name} | ${rooms.map((room) => count(kind, room)).join(' | ')} | ${kind.why} |`).join('\n')}

## Scores

${scoreTable(results)}
## Survivors

${[...byPath]
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .map(([path, own]) => `### ${path}\n\n${[...own].map(([name, places]) => `- ${name}: ${places.join(', ')}`).join('\n')}\n`)
  .join('\n')}`;
writeFileSync(fileURLToPath(new URL('SURVIVORS.md', import.meta.url)), text);
console.log(
  rooms
    .map(
      (room) =>
        `${room}: ${survivors.filter((mutant) => mutant.kind === room).length} of ${results.filter((mutant) => mutant.kind === room).length} survive`,
    )
    .join('\n'),
);

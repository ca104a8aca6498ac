// Makes what a new rule, figure or word begins with, and says what comes next: npm run new rule|figure|word NAME
// A figure takes the facts that it is worked out of behind its name: npm run new figure leaf-area leaf.width leaf.height
// What is to be filled in begins with “…”; the tests of the new thing fail, and say so, until it is.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Why nothing is made, in words. */
export class Refusal extends Error {}

/** A file of the tree; undefined where there is none. */
const onDisk = (path) => (existsSync(join(root, path)) ? readFileSync(join(root, path), 'utf8') : undefined);

const longestName = 40;
const pascal = (name) => camel(`-${name}`);
const plural = (block) => (block === 'leaf' ? 'leaves' : `${camel(block)}s`);
const camel = (name) => name.replace(/-([a-z0-9])/g, (_, letter) => letter.toUpperCase());

function checkName(name) {
  if (!/^[a-z]+(-[a-z0-9]+)*$/.test(name))
    throw new Refusal(`“${name}” is no name: whole words in small letters, with hyphens between them, as in hold-to-run-too-fast.`);
  if (name.length > longestName) throw new Refusal(`“${name}” is longer than ${longestName} characters.`);
}

function checkFree(read, ...paths) {
  const taken = paths.find((path) => read(path) !== undefined);
  if (taken !== undefined) throw new Refusal(`${taken} is there already.`);
}

const rule = (name) => `import { factPlace } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';

export const rule = installationRule({
  name: '${name}',
  // error: it can hurt somebody or cannot work; warning: it may; note: worth knowing.
  severity: 'warning',
  title: '… what is wrong in general, in one sentence.',
  why: '… why that matters.',
  remedy: '… what to do about it.',
  source: commonPractice,
  acceptable: true,
  check: ({ leaves }, report) => {
    for (const leaf of leaves) {
      const { width } = leaf.facts;
      // A number against a limit is better held (holds, with a bound), as in leaf-over-drive-rating: editors then show how much is left.
      // Quiet where what it needs is missing: that is said elsewhere, once. What is said is worked out last.
      if (width === undefined || width.value < 20) continue;
      report({ at: factPlace(leaf, width), what: \`… what is wrong with “\${leaf.name}”, in the file’s own words and numbers.\` });
    }
  },
});
`;

const rulePage = (name) => `# ${name}

… exactly what it finds, and of what.

## Why

## What to do

## Source

## Examples

… what this one shows:

\`\`\`gate flagged
language 1

leaf west {
  width 2 m
}
\`\`\`

… where the limit is, or what mends it:

\`\`\`gate sound
language 1

leaf west {
  width 1 m
}
\`\`\`
`;

const parameters = (facts) => facts.map((fact) => camel(fact));

const figureMaths = (name, facts) => `/**
 * … what it is, in SI; undefined where it cannot be.
${parameters(facts)
  .map((each) => ` * @param ${each} … what it is, its unit, its range.\n`)
  .join('')} * Source: … the book or the standard.
 */
export const ${camel(name)} = (${parameters(facts)
  .map((each) => `${each}: number`)
  .join(', ')}): number | undefined => (${parameters(facts)
  .map((each) => `${each} > 0`)
  .join(' && ')} ? ${parameters(facts).join(' * ')} : undefined);
`;

const takenFrom = (subject, facts) =>
  `const { ${facts.map((fact) => (camel(fact) === fact ? fact : `'${fact}': ${camel(fact)}`)).join(', ')} } = ${subject}.facts;`;

const figureWorking = (name, block, facts) => `import { perSubject, type ${pascal(block)} } from '../../model/index.ts';
import { ${camel(name)} } from './maths.ts';

/** What the page says it is; worked out once for each ${block}. */
export const ${camel(name)}Of = perSubject((${camel(block)}: ${pascal(block)}): number | undefined => {
  ${takenFrom(camel(block), facts)}
  if (${parameters(facts)
    .map((each) => `${each} === undefined`)
    .join(' || ')}) return undefined;
  return ${camel(name)}(${parameters(facts)
    .map((each) => `${each}.value`)
    .join(', ')});
});
`;

const figure = (name, block, facts) => `import { factPlace } from '../../model/index.ts';
import type { FigureKind } from '../kind.ts';
import { ${camel(name)}Of } from './working.ts';

export const figures: readonly FigureKind[] = [
  {
    // A figure of the whole site has no NAME in its id (site.${name}), and '' is its subject: give('', …).
    id: '${block}.NAME.${name}',
    title: '… what it is, in one line',
    // SI, as others write it: m, m², kg, N, N·m, s, V, A; angles in deg. Topics stand in kind.ts.
    unit: 'm',
    topic: 'travel',
    formula: '… how it is worked out',
    source: { text: 'common practice, no source', standing: 'common practice' },
    changedBy: '… the lines that change it',
    work: ({ ${plural(block)} }, give) => {
      for (const ${camel(block)} of ${plural(block)}) {
        const value = ${camel(name)}Of(${camel(block)});
        if (value === undefined) continue;
        ${takenFrom(camel(block), facts)}
        give(${camel(block)}.name, value, factPlace(${camel(block)}, ${parameters(facts)[0]}), () => [
${parameters(facts)
  .map((each, i) => `          { name: '${facts[i].replaceAll('-', ' ')}', value: ${each}?.value ?? 0, unit: 'm' },\n`)
  .join('')}        ]);
      }
    },
  },
];
`;

const figurePage = (name, block, facts) => `# ${name}

## What it is

… what it is, and what is left out of it.

## Formula

… \`formula\`

## Source

Common practice, no source.

## Example

… by hand, or of the table or the book that has it: the numbers and what comes of them.

\`\`\`gate
language 1

${block} west {
${facts.map((fact) => `  ${fact} 2 m\n`).join('')}}
\`\`\`

\`\`\`figures
${block}.west.${name} 0 m
\`\`\`
`;

const wordLine = (word) => `    ${word.includes('-') ? `'${word}'` : word}: {
      doc: '… what it says, in one sentence.',
      example: '${word} 1 m',
      slots: { value: quantity('length', 0, 1, { doc: '… what the value is.' }) },
    },
`;

/** The file that holds the words of a block. */
const wordsOf = (block) => `server/vocabulary/words/${block}.ts`;

/** A block's source with one word more, behind all others. */
export function withWord(source, word) {
  if (new RegExp(`^    '?${word}'?: \\{`, 'm').test(source)) throw new Refusal(`The block has a line “${word}” already.`);
  const opens = /^ {2}lines: \{(\},)?$/m.exec(source);
  if (opens === null) throw new Refusal('No “lines: {” stands in the file of that block.');
  const from = opens.index + '  lines: {'.length;
  const closes = opens[1] === undefined ? source.indexOf('\n  },', from) + 1 : from;
  const lines = opens[1] === undefined ? wordLine(word) : `\n${wordLine(word)}  `;
  return withImport(source.slice(0, closes) + lines + source.slice(closes), 'quantity');
}

/** A source that imports a name from the kinds of slots. */
function withImport(source, name) {
  const found = /^import \{ (.*) \} from '(\.\.?\/spec\.ts)';$/m.exec(source);
  if (found === null) return `import { ${name} } from '../spec.ts';\n${source}`;
  const names = found[1].split(', ');
  if (names.includes(name)) return source;
  return source.replace(found[0], `import { ${[name, ...names].join(', ')} } from '${found[2]}';`);
}

/** How one page alone is run, and written. */
const pageAlone = (room, name) => [
  `SAY=1 npx vitest run tests/${room}/pages.test.ts -t ${name}    (writes what comes out into the page: work every sentence and number before you keep it)`,
  `npx vitest run tests/${room}/pages.test.ts -t ${name}`,
];

/** The block and its facts that a figure is worked out of, as `leaf.width`: all of one block. */
function factsOf(read, given) {
  const pairs = given.map((fact) => fact.split('.'));
  const [block] = pairs[0];
  if (pairs.some((pair) => pair.length !== 2 || pair[0] !== block))
    throw new Refusal('The facts of a figure are of one block: leaf.width leaf.height');
  const words = read(wordsOf(block));
  const unknown = pairs.find(([, fact]) => words === undefined || !new RegExp(`^    '?${fact}'?: \\{`, 'm').test(words));
  if (unknown !== undefined) throw new Refusal(`No line “${unknown[1]}” stands in ${wordsOf(block)}.`);
  return { block, facts: pairs.map(([, fact]) => fact) };
}

const kinds = {
  rule: (name, read) => {
    checkName(name);
    const folder = `server/rules/${name}`;
    checkFree(read, `${folder}/rule.ts`, `${folder}/page.md`);
    return {
      files: { [`${folder}/rule.ts`]: rule(name), [`${folder}/page.md`]: rulePage(name) },
      next: [
        `Fill in what begins with “…” in ${folder}/rule.ts and page.md.`,
        'Mark what is found in an example with # flagged, and put the example next to the limit.',
        'npm run generate    (writes why, what to do and the source into the page, and the rule into the list)',
        ...pageAlone('rules', name),
        'npm run tidy',
      ],
    };
  },
  figure: (name, read, given) => {
    checkName(name);
    const folder = `server/figures/${name}`;
    checkFree(read, `${folder}/figure.ts`, `${folder}/page.md`);
    const { block, facts } = factsOf(read, given.length === 0 ? ['leaf.width'] : given);
    return {
      files: {
        [`${folder}/maths.ts`]: figureMaths(name, facts),
        [`${folder}/working.ts`]: figureWorking(name, block, facts),
        [`${folder}/figure.ts`]: figure(name, block, facts),
        [`${folder}/page.md`]: figurePage(name, block, facts),
      },
      next: [
        `Fill in what begins with “…” in ${folder}: maths.ts is pure and in SI, figure.ts shows the value; working.ts reads the facts.`,
        'npm run generate    (puts it into the list and the manual)',
        ...pageAlone('figures', name),
        `Where the example of the page cannot show all of it, check the maths in tests/figures/${name}.test.ts against something published.`,
        'npx vitest run tests/examples -u    (the figures of the examples; look at what is new)',
        'npm run tidy',
      ],
    };
  },
  word: (name, read) => {
    const [block, word, ...more] = name.split('.');
    if (word === undefined || more.length > 0)
      throw new Refusal(`Say of which block it is: npm run new word leaf.${name.replaceAll('.', '-') || 'colour'}`);
    checkName(word);
    const path = wordsOf(block);
    const source = read(path);
    if (source === undefined) throw new Refusal(`There is no block “${block}”: ${path} is not there.`);
    return {
      files: { [path]: withWord(source, word) },
      next: [
        `Fill in what begins with “…” in ${path}: limits are those outside which a number is surely a slip of the pen.`,
        'safety: true where it decides whether somebody can be hurt; many: true where it may stand more than once.',
        'npm run generate    (its type, its manual, completion, highlighting and snippets follow)',
        'npx vitest run tests/vocabulary tests/generated.test.ts',
      ],
    };
  },
};

/** The files that a new thing begins with, by their path from the root, and what comes next. Throws a Refusal. */
export function scaffold(kind, name, read = onDisk, given = []) {
  const make = Object.hasOwn(kinds, kind ?? '') ? kinds[kind] : undefined;
  if (make === undefined || name === undefined) throw new Refusal('npm run new rule|figure|word NAME [BLOCK.FACT…, for a figure]');
  return make(name, read, given);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    const [kind, name, ...given] = process.argv.slice(2);
    const { files, next } = scaffold(kind, name, onDisk, given);
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
      console.log(`wrote ${path}`);
    }
    console.log(`\nNext:\n${next.map((line) => `  ${line}\n`).join('')}`);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    console.error(error.message);
    process.exitCode = 2;
  }
}

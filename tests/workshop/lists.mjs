// Writes the lists of rules, figures and blocks from their folders: the registry that nobody keeps by hand.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const camel = (name) => name.replace(/-([a-z0-9])/g, (_, letter) => letter.toUpperCase());

/** The text of `server/ROOM/all.ts`, from the folders that hold FILE. */
export function listOf(room, file, exported, list, type, from) {
  const folder = join(root, 'server', room);
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(folder, entry.name, file)))
    .map((entry) => entry.name)
    .sort();
  const imports = names.map((name) => `import { ${exported} as ${camel(name)} } from './${name}/${file}';`);
  const spread = exported.endsWith('s') ? '...' : '';
  return `// Generated from the folders of this room by \`npm run generate\`. Do not edit.\n${imports.join('\n')}\nimport type { ${type} } from '${from}';\n\nexport const ${list}: readonly ${type}[] = [\n${names.map((name) => `  ${spread}${camel(name)},\n`).join('')}];\n`;
}

/** The same from single files of a folder, those left out that are no entry. */
export function listOfFiles(room, exported, list, type, from) {
  const names = readdirSync(join(root, 'server', room))
    .filter((file) => file.endsWith('.ts') && file !== 'all.ts' && `./${file}` !== from)
    .sort();
  const imports = names.map((file) => `import { ${exported} as ${camel(file.slice(0, -3))} } from './${file}';`);
  return `// Generated from the files of this folder by \`npm run generate\`. Do not edit.\n${imports.join('\n')}\nimport type { ${type} } from '${from}';\n\nexport const ${list}: readonly ${type}[] = [\n${names.map((file) => `  ${camel(file.slice(0, -3))},\n`).join('')}];\n`;
}

/**
 * The words of the blocks, put together from the files of `server/vocabulary/words` that have a block in them. The name of a file
 * is the word, and each says its place among the others.
 */
export function listOfBlocks() {
  const folder = join(root, 'server', 'vocabulary', 'words');
  const blocks = readdirSync(folder)
    .map((file) => ({ file, text: readFileSync(join(folder, file), 'utf8') }))
    .filter(({ text }) => text.includes('export const block = {'))
    .map(({ file, text }) => ({ word: file.slice(0, -3), place: Number(/^ {2}place: (\d+),$/m.exec(text)?.[1]) }))
    .sort((a, b) => a.place - b.place);
  const places = blocks.map(({ place }) => place);
  if (places.some(Number.isNaN) || new Set(places).size < places.length)
    throw new Error(`Each block has a place of its own: ${places.join(', ')}`);
  const keyed = (word, value) => `  ${word.includes('-') ? `'${word}'` : word}: ${value},\n`;
  return `// Generated from the files of this folder by \`npm run generate\`. Do not edit.
import type { BlockOfFile, Entity } from '../spec.ts';
${blocks.map(({ word }) => `import { block as ${camel(word)}Block } from './${word}.ts';`).join('\n')}

/** All blocks that may stand in a file, by their word, in the order of their places. */
export const blocks = {
${blocks.map(({ word }) => keyed(word, `${camel(word)}Block`)).join('')}} as const satisfies Readonly<Record<string, BlockOfFile>>;

/** What is read of each block, as yet nothing. Written out, so that all are objects of one shape. */
export const noneRead = (): Record<keyof typeof blocks, Entity[]> => ({
${blocks.map(({ word }) => keyed(word, '[]')).join('')}});
`;
}

/** The templates of `client/snippets` as texts: the core reads no disk. */
function snippetFiles() {
  const folder = join(root, 'client', 'snippets');
  const names = readdirSync(folder)
    .filter((file) => file.endsWith('.gate'))
    .sort();
  const entries = names.map((file) => {
    const lines = readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n').split('\n');
    return `  {\n    name: '${file.slice(0, -5)}',\n    text: [\n${lines.map((line) => `      ${JSON.stringify(line)},\n`).join('')}    ].join('\\n'),\n  },\n`;
  });
  return `// Generated from client/snippets by \`npm run generate\`. Do not edit.\n\n/** Each a whole file of the language; snippets.ts says which stretch of it is offered. */\nexport const snippetFiles: readonly { readonly name: string; readonly text: string }[] = [\n${entries.join('')}];\n`;
}

/** Every generated list: path from the root, and the text it should have. */
export function lists() {
  return {
    'server/rules/all.ts': listOf('rules', 'rule.ts', 'rule', 'allRules', 'Rule', './rule.ts'),
    'server/figures/all.ts': listOf('figures', 'figure.ts', 'figures', 'allFigures', 'FigureKind', './kind.ts'),
    'server/vocabulary/words/all.ts': listOfBlocks(),
    'server/editor/snippet-files.ts': snippetFiles(),
    'server/cli/commands/all.ts': listOfFiles('cli/commands', 'command', 'allCommands', 'Command', '../command.ts'),
    'server/cli/outputs/all.ts': listOfFiles('cli/outputs', 'output', 'allOutputs', 'Output', './output.ts'),
    'server/lsp/features/all.ts': listOfFiles('lsp/features', 'feature', 'allFeatures', 'Feature', './feature.ts'),
  };
}

/** Writes what is stale; gives the paths it wrote. */
export function writeStale(files) {
  const written = [];
  for (const [path, text] of Object.entries(files)) {
    const full = join(root, path);
    if (existsSync(full) && readFileSync(full, 'utf8') === text) continue;
    writeFileSync(full, text);
    written.push(path);
  }
  return written;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) for (const path of writeStale(lists())) console.log(`wrote ${path}`);

// The choices of the vocabulary that the questions for a new site offer, as a module of the client: it may not import the
// vocabulary, which would be in the extension twice.
import { blocks } from '../../server/vocabulary/index.ts';

const choices = {
  rules: blocks.site.lines.rules.slots.value.options,
  users: blocks.site.lines.users.slots.value.options,
  sight: blocks.site.lines.sight.slots.value.options,
  opens: blocks.leaf.lines.opens.slots.way.options,
} as const;

const name = (word: string): string => (/^[a-z]+$/.test(word) ? word : `'${word}'`);
const text = (words: string): string => `'${words.replace(/[\\']/g, '\\$&')}'`;

export const questions = (): string =>
  [
    '// Written by `npm run generate` from server/vocabulary/words: what the choices of a new site mean.',
    'export const choices = {',
    ...Object.entries(choices).flatMap(([line, options]) => [
      `  ${name(line)}: {`,
      ...Object.entries(options).map(([option, meaning]) => `    ${name(option)}: ${text(meaning)},`),
      '  },',
    ]),
    '} as const;',
    '',
  ].join('\n');

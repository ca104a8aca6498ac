// Everything that is generated from the vocabulary table and the lists of rules and figures. Pure: the texts by path from
// the root. `npm run generate` writes them; a test fails when one of them is stale.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { languageConfiguration } from './generated-configuration.ts';
import { confusablesTable } from './generated-confusables.ts';
import { highlighting } from './generated-highlighting.ts';
import { manual } from './generated-manual.ts';
import { pages } from './generated-pages.ts';
import { questions } from './generated-questions.ts';
import { records } from './generated-records.ts';
import { withConfiguration } from './generated-settings.ts';
import { snippets } from './generated-snippets.ts';
import { root } from './generated-traceability.ts';
import { treeSitterHighlights } from './generated-tree-sitter.ts';

const json = (value: unknown): string => JSON.stringify(value, undefined, 2) + '\n';

export function generated(): Record<string, string> {
  return {
    'grammar/pintle.tmLanguage.json': json(highlighting()),
    'grammar/tree-sitter/queries/highlights.scm': treeSitterHighlights(),
    'grammar/language-configuration.json': json(languageConfiguration()),
    'client/snippets.json': json(snippets()),
    'client/choices.ts': questions(),
    'server/vocabulary/manual.md': manual(),
    'server/vocabulary/confusables-table.ts': confusablesTable(),
    'server/vocabulary/records.ts': records(),
    ...pages(),
    'package.json': withConfiguration(readFileSync(join(root, 'package.json'), 'utf8')),
  };
}

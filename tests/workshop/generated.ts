// Everything that is generated from the vocabulary table and the lists of rules and figures. Pure: the texts by path from
// the root. `npm run generate` writes them; a test fails when one of them is stale.
import { languageConfiguration } from './generated-configuration.ts';
import { highlighting } from './generated-highlighting.ts';
import { manual } from './generated-manual.ts';
import { snippets } from './generated-snippets.ts';

const json = (value: unknown): string => JSON.stringify(value, undefined, 2) + '\n';

export function generated(): Record<string, string> {
  return {
    'grammar/pintle.tmLanguage.json': json(highlighting()),
    'grammar/language-configuration.json': json(languageConfiguration()),
    'client/snippets.json': json(snippets()),
    'server/vocabulary/manual.md': manual(),
  };
}

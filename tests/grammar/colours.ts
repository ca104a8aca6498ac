// The colours that a TextMate grammar gives to a text, worked out on vscode-textmate with oniguruma, as editors do.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { IGrammar, StateStack } from 'vscode-textmate';

const require = createRequire(import.meta.url);
const textmate = require('vscode-textmate') as typeof import('vscode-textmate');
const oniguruma = require('vscode-oniguruma') as typeof import('vscode-oniguruma');
let engine: Promise<void> | undefined;

export async function loaded(source: string): Promise<IGrammar> {
  await (engine ??= oniguruma.loadWASM(readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'))));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns: string[]) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text: string) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(source, 'pintle.json'),
  });
  return (await registry.loadGrammar('source.pintle')) as IGrammar;
}

export interface Colours {
  /** For each UTF-16 unit of the text, the innermost scope without its last part, and all scopes. */
  readonly scopes: readonly (readonly string[])[];
  /** True when every line left the grammar as it found it. */
  readonly everyLineEnds: boolean;
}

/** Editors split at `\n`, `\r\n` and `\r`; so do we. */
export function coloursBy(grammar: IGrammar, text: string): Colours {
  const scopes: (readonly string[])[] = new Array<readonly string[]>(text.length).fill([]);
  let state: StateStack = textmate.INITIAL;
  let at = 0;
  let everyLineEnds = true;
  let first: StateStack | undefined;
  for (const [i, line] of text.split(/(\r\n|\r|\n)/).entries()) {
    if (i % 2 === 0) {
      const result = grammar.tokenizeLine(line, state);
      for (const token of result.tokens)
        for (let c = token.startIndex; c < Math.min(token.endIndex, line.length); c++)
          scopes[at + c] = token.scopes.map((name) => name.replace(/\.pintle$/, ''));
      first ??= result.ruleStack;
      if (!result.ruleStack.equals(first) || result.ruleStack.depth !== 1) everyLineEnds = false;
      state = result.ruleStack;
    }
    at += line.length;
  }
  return { scopes, everyLineEnds };
}

// Which words have which colour: the vocabulary as the grammars for highlighting need it.
import { type Slot, units } from '../../server/vocabulary/index.ts';
import { allBlocks, allLines } from './generated-places.ts';

interface LineWords {
  readonly keywords: Set<string>;
  readonly choices: Set<string>;
  hasNames: boolean;
}

/** Keywords and choices of every line word; what a word means in several blocks is put together. */
function lineWords(): Map<string, LineWords> {
  const found = new Map<string, LineWords>();
  for (const [line, spec] of allLines()) {
    const words = found.get(line) ?? { keywords: new Set<string>(), choices: new Set<string>(), hasNames: false };
    for (const slot of Object.values<Slot>(spec.slots)) {
      if (slot.after !== undefined) words.keywords.add(slot.after);
      if (slot.kind === 'name' || slot.kind === 'ref') words.hasNames = true;
      if (slot.kind === 'choice') for (const option of Object.keys(slot.options)) words.choices.add(option);
    }
    found.set(line, words);
  }
  return found;
}

/** Line words with the same keywords and choices. */
export interface LineGroup {
  /** `control`: it says something about the file and not about the site. */
  readonly kind: 'fact' | 'control';
  readonly words: readonly string[];
  readonly keywords: ReadonlySet<string>;
  readonly choices: ReadonlySet<string>;
  /** Names that people have given stand in it too, and may be the same as words of other lines. */
  readonly hasNames: boolean;
}

export function lineGroups(): LineGroup[] {
  const blockWords = new Set(allBlocks().map((block) => block.word));
  const groups = new Map<string, LineGroup & { readonly words: string[] }>();
  for (const [line, { keywords, choices, hasNames }] of lineWords()) {
    if (blockWords.has(line)) continue;
    const kind = line === 'use' || line === 'language' || line === 'accept' ? 'control' : 'fact';
    const key = [kind, hasNames, [...keywords].sort(), [...choices].sort()].join('\n');
    const group = groups.get(key) ?? { kind, words: [], keywords, choices, hasNames };
    group.words.push(line);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** Words of blocks with a name of their own, and of those without. */
export function blockWords(): { readonly named: ReadonlySet<string>; readonly nameless: ReadonlySet<string> } {
  const named = new Set(
    allBlocks()
      .filter((block) => block.spec.named)
      .map((block) => block.word),
  );
  return {
    named,
    nameless: new Set(
      allBlocks()
        .map((block) => block.word)
        .filter((word) => !named.has(word)),
    ),
  };
}

/** Every spelling of every unit that is one word. */
export const unitNames = (): string[] => units.flatMap((unit) => [unit.name, ...unit.also]).filter((name) => !/^[0-9]/.test(name));

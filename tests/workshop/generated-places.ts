// The vocabulary table laid out flat, for all that is generated from it.
import { anywhereLines, type BlockSpec, blocks, type LineSpec, topLines } from '../../server/vocabulary/index.ts';

export interface BlockPlace {
  /** Words of the blocks around it, outermost first. */
  readonly path: readonly string[];
  readonly word: string;
  readonly spec: BlockSpec;
}

/** Every block, each right before the blocks inside it. */
export function allBlocks(): BlockPlace[] {
  const places: BlockPlace[] = [];
  const add = (path: readonly string[], word: string, spec: BlockSpec): void => {
    places.push({ path, word, spec });
    for (const [key, block] of Object.entries(spec.blocks)) add([...path, word], key, block);
  };
  for (const [word, spec] of Object.entries(blocks)) add([], word, spec);
  return places;
}

export const linesOfFile: Readonly<Record<string, LineSpec>> = topLines;
export const linesOfAnyBlock: Readonly<Record<string, LineSpec>> = anywhereLines;

/** Every line there is, in a block or out of one. */
export function allLines(): [word: string, spec: LineSpec][] {
  return [
    ...Object.entries(linesOfFile),
    ...Object.entries(linesOfAnyBlock),
    ...allBlocks().flatMap(({ spec }) => Object.entries(spec.lines)),
  ];
}

// The literals by which the vocabulary makes what it reads: one for each shape that a block or a line can have.
import { type BlockSpec, type LineSpec, shapeOf } from '../../server/vocabulary/index.ts';
import { allBlocks, allLines } from './generated-places.ts';

/** The keys of what is read of each line, and of the facts of each block. */
function shapes(): (readonly string[])[] {
  const all = [...allLines().map(([, spec]) => lineKeys(spec)), ...allBlocks().map(({ spec }) => factKeys(spec))];
  return [...new Map(all.map((keys) => [shapeOf(keys), keys] as const)).values()];
}

const lineKeys = (spec: LineSpec): readonly string[] => ['line', ...Object.keys(spec.slots)];
const factKeys = (spec: BlockSpec): readonly string[] => Object.keys(spec.lines);

const keyText = (key: string): string => (/^[a-z]\w*$/i.test(key) ? key : `'${key}'`);

export function records(): string {
  const literal = (keys: readonly string[]): string =>
    [`  '${shapeOf(keys)}': (v) => ({`, ...keys.map((key, at) => `    ${keyText(key)}: v[${at}],`), '  }),'].join('\n');
  return `// Generated from the table by \`npm run generate\`. Do not edit.
// A literal of its own for each shape: what is copied from a sample, or put together key by key, takes several times as long.

/** By the shape, what makes such a record of its values, which come in the order of the keys. */
export const records: Readonly<Record<string, (v: readonly unknown[]) => Record<string, unknown>>> = {
${shapes().map(literal).join('\n')}
};
`;
}

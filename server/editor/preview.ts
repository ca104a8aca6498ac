// Drawings of a file for an editor: pictures, the same in words and as tables, and where in the text each thing stands.
import type { Analysis } from '../engine/index.ts';
import { drawing } from '../engine/inside.ts';
import { inOneGo, type Steps } from '../model/index.ts';
import { type Cycle, cycleMotion, siteTitle, styleSheet, svgOf, type Thing, thingsOf } from '../papers/index.ts';
import { visible } from './diagnostics.ts';

export interface DrawingShown {
  /** `plan`, `timing`, `force`, `wiring`. */
  readonly id: string;
  readonly title: string;
  /** The drawing in words, for those who cannot see it. */
  readonly description: string;
  /** A whole `svg` element with a viewBox and no size, no script, no style and no address; text from the file is escaped. */
  readonly svg: string;
  /** The same facts to read. */
  readonly table: { readonly caption: string; readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** Why there is nothing to draw, and which facts would change that; then `svg` is empty. */
  readonly lacks?: string;
}

export interface Preview {
  /** The site's title, or the file's name. */
  readonly title: string;
  readonly counts: { readonly error: number; readonly warning: number; readonly note: number };
  readonly drawings: readonly DrawingShown[];
  /** Everything that is drawn and stands in the file, with offsets in the text. A drawing's element has its id in `data-thing`. */
  readonly things: readonly Thing[];
  /** How the leaves move through one full cycle; none where that cannot be worked out. */
  readonly cycle?: Cycle;
  /** Style sheet of the drawings: classes, and colours as custom properties that a theme may set. */
  readonly style: string;
}

/** All drawings of a file. A library has none; its drawings say so. */
export const preview = (analysis: Analysis): Preview => inOneGo(previewing(analysis));

/** The same in small steps, for whoever must not work long at a time. */
export function* previewing(analysis: Analysis): Steps<Preview> {
  const { installation, findings, text } = analysis;
  const drawings = yield* drawing(analysis);
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findings) counts[severity]++;
  const shown: DrawingShown[] = [];
  for (const each of drawings) {
    const { id, title, description, table, lacks } = each;
    shown.push({ id, title, description, svg: yield* svgOf(each), table, ...(lacks === undefined ? {} : { lacks }) });
  }
  const cycle = yield* cycleMotion(installation);
  return {
    title: siteTitle(installation),
    counts,
    drawings: shown,
    things: thingsOf(drawings).map((thing) => ({ ...thing, ...visible(text, thing) })),
    ...(cycle === undefined ? {} : { cycle }),
    style: styleSheet(),
  };
}

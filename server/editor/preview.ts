// Drawings of a file for an editor: pictures, the same in words and as tables, and where in the text each thing stands.
import { cycleMotion, drawingsOf, fileOf, siteTitle, styleSheet, svgOf, thingsOf, type Cycle, type Drawing, type Theme, type Thing } from '../papers/index.ts';
import { visible } from './diagnostics.ts';
import type { Analysis } from './workspace.ts';

export interface DrawingShown {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly svg: string;
  readonly table: { readonly caption: string; readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
  readonly lacks?: string;
}

export interface Preview {
  readonly title: string;
  readonly counts: { readonly error: number; readonly warning: number; readonly note: number };
  readonly drawings: readonly DrawingShown[];
  /** With offsets in the text. */
  readonly things: readonly Thing[];
  readonly cycle?: Cycle;
  readonly style: string;
}

export interface DrawingFile {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** Drawn once for each reading, and only when somebody asks. */
const kept = new WeakMap<Analysis, readonly Drawing[]>();

function drawn(analysis: Analysis): readonly Drawing[] {
  let drawings = kept.get(analysis);
  if (drawings === undefined) kept.set(analysis, (drawings = drawingsOf(analysis.installation, [...analysis.findings, ...analysis.accepted])));
  return drawings;
}

/** All drawings of a file. A library has none; its drawings say so. */
export function preview(analysis: Analysis): Preview {
  const { installation, findings, text } = analysis;
  const drawings = drawn(analysis);
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findings) counts[severity]++;
  const cycle = cycleMotion(installation);
  return {
    title: siteTitle(installation),
    counts,
    drawings: drawings.map((drawing) => ({
      id: drawing.id,
      title: drawing.title,
      description: drawing.description,
      svg: svgOf(drawing),
      table: drawing.table,
      ...(drawing.lacks === undefined ? {} : { lacks: drawing.lacks }),
    })),
    things: thingsOf(drawings).map((thing) => ({ ...thing, ...visible(text, thing) })),
    ...(cycle === undefined ? {} : { cycle }),
    style: styleSheet(),
  };
}

/** One drawing as a file of its own; empty where there is none of that name, or nothing to draw. */
export function drawingFile(analysis: Analysis, id: string, theme: Theme): DrawingFile {
  const drawing = drawn(analysis).find((each) => each.id === id);
  const svg = drawing === undefined ? '' : fileOf(drawing, theme);
  return drawing === undefined || svg === '' ? { svg: '', width: 0, height: 0 } : { svg, width: Math.ceil(drawing.width), height: Math.ceil(drawing.height) };
}

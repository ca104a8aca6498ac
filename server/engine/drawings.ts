// Drawings of a file, made once for each reading of it and only when somebody asks.
import { type Drawing, drawingsOf, fileOf, type Theme } from '../papers/index.ts';
import type { Analysis } from './analysis.ts';

export interface DrawingFile {
  /** A whole SVG document; empty where there is nothing to draw. */
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

const kept = new WeakMap<Analysis, readonly Drawing[]>();

/** @internal All drawings of a file; what an acceptance covers is drawn as what it is. */
export function drawn(analysis: Analysis): readonly Drawing[] {
  let drawings = kept.get(analysis);
  if (drawings === undefined)
    kept.set(analysis, (drawings = drawingsOf(analysis.installation, [...analysis.findings, ...analysis.accepted])));
  return drawings;
}

/** The names of a file's drawings that have something to show. */
export const drawingNames = (analysis: Analysis): Drawing['id'][] =>
  drawn(analysis).flatMap(({ id, picture }) => (picture === undefined ? [] : [id]));

/** One drawing as a file of its own; empty where there is none of that name, or nothing to draw. */
export function drawingFile(analysis: Analysis, id: string, theme: Theme): DrawingFile {
  const drawing = drawn(analysis).find((each) => each.id === id);
  const svg = drawing === undefined ? '' : fileOf(drawing, theme);
  if (drawing === undefined || svg === '') return { svg: '', width: 0, height: 0 };
  return { svg, width: Math.ceil(drawing.width), height: Math.ceil(drawing.height) };
}

// Drawings of a file, made once for each reading of it and only when somebody asks; in small steps for whoever must not work long at
// a time.
import { inOneGo, type Steps } from '../model/index.ts';
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
export function* drawing(analysis: Analysis): Steps<readonly Drawing[]> {
  const known = kept.get(analysis);
  if (known !== undefined) return known;
  const drawings = yield* drawingsOf(analysis.installation, [...analysis.findings, ...analysis.accepted]);
  kept.set(analysis, drawings);
  return drawings;
}

/** The names of a file's drawings that have something to show. */
export const drawingNames = (analysis: Analysis): Drawing['id'][] =>
  inOneGo(drawing(analysis)).flatMap(({ id, picture }) => (picture === undefined ? [] : [id]));

/** One drawing as a file of its own; empty where there is none of that name, or nothing to draw. */
export const drawingFile = (analysis: Analysis, id: string, theme: Theme): DrawingFile => inOneGo(drawingToFile(analysis, id, theme));

/** @internal The same in small steps. */
export function* drawingToFile(analysis: Analysis, id: string, theme: Theme): Steps<DrawingFile> {
  const wanted = (yield* drawing(analysis)).find((each) => each.id === id);
  const svg = wanted === undefined ? '' : yield* fileOf(wanted, theme);
  if (wanted === undefined || svg === '') return { svg: '', width: 0, height: 0 };
  return { svg, width: Math.ceil(wanted.width), height: Math.ceil(wanted.height) };
}

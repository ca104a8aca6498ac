// All that the house says of a text, as plain data: an old tree and a new one are held against each other by it (against.mjs).
import { completion } from '../../server/editor/completion.ts';
import { hover } from '../../server/editor/hover.ts';
import { inlayValues } from '../../server/editor/inlay.ts';
import { lenses } from '../../server/editor/lenses.ts';
import { overview } from '../../server/editor/overview.ts';
import { figuresShown, type ReadResult, Workspace } from '../../server/engine/index.ts';
import { inOneGo } from '../../server/model/index.ts';
import { drawingsOf, svgOf } from '../../server/papers/index.ts';
import { marginsOf } from '../../server/rules/index.ts';

/** Every part of what is said of a text, by its name. */
export function told(root: string, path: string, text: string, asOf: string, read: (path: string) => ReadResult): Record<string, unknown> {
  const analysis = new Workspace({ root, read }).judge(path, text, asOf);
  const { findings, accepted, installation } = analysis;
  const places = [0.2, 0.5, 0.8].map((share) => Math.floor(text.length * share));
  return {
    findings,
    accepted,
    figures: figuresShown(analysis),
    margins: marginsOf(installation).map(({ rule, ...margin }) => ({ ...margin, rule: rule.name })),
    drawings: inOneGo(drawingsOf(installation, [...findings, ...accepted])).map((drawing) => ({
      ...drawing,
      picture: inOneGo(svgOf(drawing)),
    })),
    overview: overview(analysis),
    values: inlayValues(analysis),
    lenses: lenses(analysis),
    hovers: places.map((at) => hover(analysis, at)),
    completions: places.map((at) => completion(analysis, at)),
  };
}

import type { Source } from '../../figures/index.ts';
import { type OutputLoad, outputsOf, sumOfCurrents } from '../../figures/supply-budget/working.ts';
import { factPlace, type Panel } from '../../model/index.ts';
import { bound, hair, keeps } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { toFact, toModelFact } from '../related.ts';
import { type Hold, installationRule, type Related } from '../rule.ts';
import { quoted, quotedList, written } from '../words.ts';

/** A supply should be able to give this much more than is drawn, from memory. */
const reserve = 1.2;
const byMemory: Source = { text: 'a reserve of 20 %, common practice (from memory)', standing: 'from memory' };

const held = {
  all: { figure: 'panel.PANEL.output.NAME.load', name: 'load', unit: 'A', way: 'most' },
  reserved: { figure: 'panel.PANEL.output.NAME.load', name: 'load within the reserve', unit: 'A', way: 'most' },
} as const;

export const rule = installationRule({
  name: 'output-overloaded',
  severity: 'error',
  title: 'More current is drawn from an output of the panel than it can give.',
  why: 'Its voltage breaks down or its fuse blows, and the sensors on it fall silent, now or when the weather is cold and all of them draw at once.',
  remedy: 'Feed some of it from another supply, or choose a panel that can give more.',
  source: sumOfCurrents,
  acceptable: false,
  holds: ({ panels }, hold) => {
    for (const panel of panels) for (const load of outputsOf(panel) ?? []) if (load.known > 0) holdLoad(panel, load, hold);
  },
});

/** First against all that the output can give; where that is kept, against what leaves a reserve. */
function holdLoad(panel: Panel, load: OutputLoad, hold: Hold): void {
  const { output, draws, known, name } = load;
  const all = bound(held.all, `${panel.name}/${name}`, known, output.current, hair(output.current));
  const at = draws[0]?.line ?? factPlace(panel);
  hold(all, at, () => ({ what: `${said(panel, load)}.`, related: relatedTo(panel, load) }));
  if (!keeps(all)) return;
  hold(bound(held.reserved, all.subject, known, output.current / reserve, all.slack), at, () => ({
    severity: 'note',
    what: `${said(panel, load)}: less than 20 % is in reserve (from memory).`,
    why: 'A supply at its limit runs hot, and there is none left for the next sensor.',
    source: byMemory,
    related: relatedTo(panel, load),
  }));
}

function said(panel: Panel, { output, draws, known }: OutputLoad): string {
  const drawing = draws.filter((draw) => (draw.current ?? 0) > 0).map((draw) => draw.name);
  return `${quotedList(drawing, 4)} ${drawing.length === 1 ? 'draws' : 'draw'} ${shown(known)} A from ${quotedList(output.terminals.map((terminal) => terminal.text))} of ${quoted(panel.name)}, which can give ${written(output.line)}`;
}

const relatedTo = (panel: Panel, { output, draws }: OutputLoad): readonly Related[] => [
  ...draws.slice(1).flatMap((draw) => toFact(`${quoted(draw.name)} hangs on it too`, draw)),
  ...toModelFact('what it can give', panel.installation, panel.model, output),
];

import { outputsOf, sumOfCurrents } from '../../figures/supply-budget/figure.ts';
import { factPlace, type Panel } from '../../model/index.ts';
import type { Source } from '../../figures/index.ts';
import { bound, hair, keeps, type Bound } from '../bounds.ts';
import { shown } from '../numbers.ts';
import { installationRule } from '../rule.ts';
import { inModel, quotedList, written } from '../wiring.ts';
import { quoted } from '../words.ts';

/** A supply should be able to give this much more than is drawn, from memory. */
const reserve = 1.2;
const byMemory: Source = { text: 'a reserve of 20 %, common practice (from memory)', standing: 'from memory' };

const held = {
  all: { figure: 'panel.PANEL.output.NAME.load', name: 'load', unit: 'A', way: 'most' },
  reserved: { figure: 'panel.PANEL.output.NAME.load', name: 'load within the reserve', unit: 'A', way: 'most' },
} as const;

type Output = NonNullable<ReturnType<typeof outputsOf>>[number];
const allOf = (panel: Panel, { name, known, output }: Output): Bound => bound(held.all, `${panel.name}/${name}`, known, output.current, hair(output.current));
const reservedOf = (panel: Panel, { name, known, output }: Output): Bound => bound(held.reserved, `${panel.name}/${name}`, known, output.current / reserve, hair(output.current));

export const rule = installationRule({
  name: 'output-overloaded',
  severity: 'error',
  title: 'More current is drawn from an output of the panel than it can give.',
  why: 'Its voltage breaks down or its fuse blows, and the sensors on it fall silent, now or when the weather is cold and all of them draw at once.',
  remedy: 'Feed some of it from another supply, or choose a panel that can give more.',
  source: sumOfCurrents,
  acceptable: false,
  check: ({ panels }, report) => {
    for (const panel of panels) {
      const outputs = outputsOf(panel);
      if (outputs === undefined || panel.model === undefined) continue;
      for (const load of outputs) {
        const { output, draws, known } = load;
        if (known === 0 || keeps(reservedOf(panel, load))) continue;
        const over = !keeps(allOf(panel, load));
        const first = draws[0]?.line;
        const drawing = draws.flatMap((draw) => (draw.current === undefined || draw.current === 0 ? [] : [draw.name]));
        const said = `${quotedList(drawing, 4)} ${drawing.length === 1 ? 'draws' : 'draw'} ${shown(known)} A from ${quotedList(output.terminals.map((terminal) => terminal.text))} of ${quoted(panel.name)}, which can give ${written(output.line)}`;
        report({
          at: first ?? factPlace(panel),
          severity: over ? 'error' : 'note',
          what: over ? `${said}.` : `${said}: less than 20 % is in reserve (from memory).`,
          ...(over ? {} : { why: 'A supply at its limit runs hot, and there is none left for the next sensor.', source: byMemory }),
          related: [
            ...draws.slice(1).map((draw) => ({ message: `${quoted(draw.name)} hangs on it too`, start: draw.line.start, end: draw.line.end })),
            inModel(panel.model, panel.installation, output.line, 'what it can give'),
          ],
        });
      }
    }
  },
  margins: ({ panels }, give) => {
    for (const panel of panels)
      for (const load of outputsOf(panel) ?? []) {
        if (load.known === 0 || panel.model === undefined) continue;
        const at = load.draws[0]?.line ?? factPlace(panel);
        give(allOf(panel, load), at);
        give(reservedOf(panel, load), at);
      }
  },
});

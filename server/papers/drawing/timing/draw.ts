// The timing chart of one full cycle: what each leaf and the panel do, second by second.
import { decidingOverlap } from '../../../figures/least-lag/working.ts';
import { motionOf } from '../../../figures/run-time/working.ts';
import type { Installation, Steps } from '../../../model/index.ts';
import { type Times, timesOf } from '../../scene/times.ts';
import { drivenLeaves, firstInWords, motionUnknown, nothingDriven, siteTitle } from '../../words.ts';
import { type Drawing, finished, limitNotes, margin, notes, nothing, sheetWidth, type Table } from '../drawing.ts';
import { fitted, short, text } from '../text.ts';
import { chartOf, seconds } from './chart.ts';
import { drawAxis, drawLegend, timingNotes } from './foot.ts';
import { drawPanel, drawPhases, top } from './gate.ts';
import { drawLags } from './lag.ts';
import { drawLeaves } from './leaves.ts';

const title = 'Timing of a full cycle';

export function* timingOf(installation: Installation): Steps<Drawing> {
  const table: Table = { caption: title, heads: ['What', 'From', 'To', 'Takes'], rows: [] };
  const times = timesOf(installation);
  if (times === undefined) return nothing('timing', title, table, lacksOf(installation));
  const chart = chartOf(installation, times);
  const { drawn } = chart;
  const heading = siteTitle(installation);
  drawn.push(text(fitted(`Timing: ${heading}`, sheetWidth - 2 * margin, 'large'), margin, 32, 'large'));
  drawPhases(chart);
  const leaves = yield* drawLeaves(chart, top + 52);
  drawLags(chart, leaves.bars);
  const panelY = leaves.end + 2;
  let y = drawPanel(chart, panelY);
  drawAxis(chart, top + 30, y, [top + 14, panelY + 11, y]);
  y = drawLegend(chart, y + 34);
  const limits = limitNotes([[leaves.count.all, 'leaves']]);
  y = notes([...limits, ...timingNotes(chart)], margin, y, sheetWidth - 2 * margin, drawn);

  const description = describe(installation, times);
  const height = y + margin;
  const told = { ...table, rows: chart.rows };
  return finished({ id: 'timing', title, heading, description, width: sheetWidth, height, table: told, drawn, things: chart.things });
}

function lacksOf(installation: Installation): string {
  const driven = drivenLeaves(installation);
  return driven.length === 0 ? nothingDriven : motionUnknown(driven.filter((leaf) => motionOf(leaf) === undefined));
}

function describe(installation: Installation, times: Times): string {
  const { cycle, dwell, leaves } = times;
  const stands = dwell === undefined ? 'it stands open until it is told to close' : `it stands open for ${seconds(dwell)}`;
  return [
    ...(cycle.preWarning > 0 ? [`The lamp warns for ${seconds(cycle.preWarning)} before each movement.`] : []),
    `The gate opens in ${seconds(cycle.opening)}, ${stands}, and closes in ${seconds(cycle.closing)}.`,
    `${firstInWords(leaves, 'leaves', ', ', ({ leaf, motion }) => `${short(leaf.name)} runs ${seconds(motion.runTime)}`)}.`,
    ...lagsInWords(installation, times),
  ].join(' ');
}

function lagsInWords(installation: Installation, { cycle }: Times): string[] {
  const opening = decidingOverlap(installation, 'opening')?.opening;
  const closing = decidingOverlap(installation, 'closing')?.closing;
  if (opening === undefined || closing === undefined) return [];
  return [
    `Where the leaves overlap, the second start must be at least ${seconds(opening.lag)} later when opening and ${seconds(closing.lag)} ` +
      `when closing; stated are ${seconds(cycle.lagOpening)} and ${seconds(cycle.lagClosing)}.`,
  ];
}

// Grid, marks and names of the two axes.
import { margin } from '../drawing.ts';
import { foot, poundForce, ticks } from '../scale.ts';
import { line } from '../svg.ts';
import { text } from '../text.ts';
import { type Chart, left, right } from './chart.ts';

/** Steps of the axis in degrees. */
const turns = [5, 10, 15, 30, 45];

export function drawAxes({ window: { of }, reader, x, y, top, bottom, drawn }: Chart): void {
  const american = reader === 'american';
  const along = american && !of.swing ? foot : 1;
  for (const mark of ticks(0, x.to / along, 10, of.swing ? turns : undefined)) {
    const at = x.at(mark * along);
    const words = text(of.swing ? `${mark}°` : String(mark), at, bottom + 16, 'small', 'middle', 'quiet');
    drawn.push(line('grid', { x: at, y: top }, { x: at, y: bottom }), words);
  }
  // Pounds-force are shown as such; the scale itself stays in newtons.
  const up = !american ? 1 : of.unit === 'N' ? poundForce : poundForce * foot;
  for (const mark of ticks(0, y.to / up, 6)) {
    const at = y.at(mark * up);
    const words = text(String(mark), left - 8, at + 4, 'small', 'end', 'quiet');
    drawn.push(line('grid', { x: left, y: at }, { x: right, y: at }), words);
  }
  drawn.push(line('axis', { x: left, y: top }, { x: left, y: bottom }), line('axis', { x: left, y: bottom }, { x: right, y: bottom }));
  const push = of.unit === 'N' ? `push, ${american ? 'lbf' : 'N'}` : `torque, ${american ? 'lbf·ft' : 'N·m'}`;
  const open = `how far the leaf is open${of.swing ? '' : `, ${american ? 'ft' : 'm'}`}`;
  drawn.push(text(push, margin, top - 8, 'small', 'start', 'quiet'), text(open, right, bottom + 30, 'small', 'end', 'quiet'));
}

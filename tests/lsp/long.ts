// A long text of many gates.
import { site, uses } from '../editor/bench.ts';

/** Many gates in one file: the blocks of the small site again and again under new names. */
export function long(lines: number): string {
  const whole = site();
  const once = whole.slice(uses.length, whole.indexOf('leaf west')) + whole.slice(whole.indexOf('motion {'));
  const again = whole.slice(whole.indexOf('leaf west'), whole.indexOf('motion {'));
  let text = uses + once;
  for (let i = 0; text.split('\n').length < lines; i++)
    text += again
      .replace(/\b(west-ram|west-edge|lower-beam|west|east|fobs|main)\b(?! closing)/g, `$1-${i}`)
      .replace(/on west closing/g, `on west-${i} closing`);
  return text;
}

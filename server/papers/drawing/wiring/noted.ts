// The things of the file that the wiring of a panel shows.
import type { Steps } from '../../../model/index.ts';
import type { Reader } from '../../../vocabulary/index.ts';
import type { Strip } from '../../scene/strip.ts';
import { firstInWords } from '../../words.ts';
import { eachOf, mappedOf, type Things, whole } from '../drawing.ts';
import { short } from '../text.ts';

/** A strip, and what is noted of it while its parts are put into words. */
export interface Noted {
  readonly strip: Strip;
  readonly things: Things;
  readonly reader: Reader;
  /** The things of terminals, by row. */
  readonly terminals: Map<number, string>;
}

interface Stretch {
  readonly start: number;
  readonly end: number;
}

export function noteStrip(strip: Strip, things: Things, reader: Reader): Noted {
  const { panel } = strip;
  things.note(`panel.${panel.name}`, `panel ${short(panel.name)}`, whole(panel.at));
  return { strip, things, reader, terminals: new Map() };
}

/** A terminal, at the place that first speaks of it. */
export function terminalThing({ strip: { panel, rows }, things, terminals }: Noted, row: number, at: Stretch): void {
  const name = rows[row]?.name ?? '';
  terminals.set(row, things.note(`terminal.${panel.name}.${name}`, `terminal ${short(name)} of ${short(panel.name)}`, at));
}

/** A model in the same file states its terminals there; of those that nothing uses, that is their place. */
export function* noteUnused(noted: Noted): Steps<void> {
  const { panel, rows } = noted.strip;
  if (panel.model?.path !== panel.installation.path) return;
  yield* eachOf(rows, ({ terminal }, row) => {
    if (terminal !== undefined && !noted.terminals.has(row)) terminalThing(noted, row, whole(terminal.line));
  });
}

/** A link of the strip, with its ends. */
export interface DrawnLink {
  readonly id: string;
  readonly title: string;
  readonly rows: readonly number[];
}

export function* noteLinks(noted: Noted): Steps<DrawnLink[]> {
  const { panel, links } = noted.strip;
  return yield* mappedOf(links, ({ link, ends }, i) => {
    const title = `link between ${firstInWords(link.ends, 'terminals', ' and ', ({ at }) => short(at.text))}`;
    const id = noted.things.note(`link.${panel.name}.${i + 1}`, title, whole(link.fact.line));
    for (const { row, end } of ends) terminalThing(noted, row, end.at);
    return { id, title, rows: ends.map(({ row }) => row) };
  });
}

// What was judged in all files of a run, kept small however many there are.
import { type JudgedTotals, mostAsked, type ReportedAccount, type ReportedAsk } from './report.ts';

interface Counted extends ReportedAsk {
  settles: number;
  sites: number;
}

/** Adds up the accounts of files. Of what sites lack the weightiest questions are kept; of libraries, of which there are few, all. */
export class JudgedSum implements JudgedTotals {
  judged = 0;
  of = 0;
  drafts = 0;
  #ofSites = 0;
  readonly #libraries = new Map<string, Counted>();
  #best: Counted[] = [];

  add({ draft, judged, of, asks }: ReportedAccount): void {
    this.judged += judged;
    this.of += of;
    if (draft) this.drafts++;
    for (const ask of asks) {
      if (!ask.ofLibrary) {
        this.#ofSites++;
        this.#best.push({ ...ask, sites: 1 });
        continue;
      }
      const key = `${ask.path}\n${ask.range.start.line}\n${ask.fact}`;
      const known = this.#libraries.get(key);
      if (known === undefined) this.#libraries.set(key, { ...ask, sites: 1 });
      else {
        known.settles += ask.settles;
        known.sites++;
      }
    }
    if (this.#best.length > mostAsked) this.#best = heaviest(this.#best);
  }

  get facts(): number {
    return this.#ofSites + this.#libraries.size;
  }

  get asks(): readonly Counted[] {
    return heaviest([...this.#libraries.values(), ...this.#best]);
  }
}

/** The sort is stable, so that of equal weight the first that was met stays first. */
const heaviest = (asks: readonly Counted[]): Counted[] => [...asks].sort((a, b) => b.settles - a.settles).slice(0, mostAsked);

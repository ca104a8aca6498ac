// What the server needs of the machine it runs on. The node and browser entries give it; tests give their own.
import type { ReadResult } from '../engine/index.ts';

/** A disk that can be read at once. Paths are absolute with forward slashes. */
export interface Disk {
  /** The text of a plain file; never follows a way out of `root`, not through links either. */
  readonly read: (path: string, root: string) => ReadResult;
  /** True where the file is there and stands, links resolved, outside `root`. */
  readonly leaves: (path: string, root: string) => boolean;
  /** Every .gate file under a folder, links not followed, a few at a time. */
  readonly list: (folder: string) => AsyncIterable<readonly string[]>;
  /** Changes when the file changes; undefined when it is not there. */
  readonly stamp: (path: string) => string | undefined;
}

export interface Host {
  /** None in a browser: there every file is asked of the client. */
  readonly disk: Disk | undefined;
  /** The day, as YYYY-MM-DD, where the reader is. */
  readonly today: () => string;
  /** Milliseconds of a clock that only runs forward. */
  readonly now: () => number;
  /** Lets everything that waits, messages first of all, have its turn. */
  readonly tick: () => Promise<void>;
  /** Where the pages of rules and figures lie, as a URI, where they were shipped along with the server. */
  readonly pages?: string | undefined;
  /** Told of each analysis that is worked out; for tests. */
  readonly observe?: (event: 'analysis' | 'stretch', detail: string) => void;
}

/** The local day of a moment. */
export function dayOf(moment: Date): string {
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${String(moment.getFullYear()).padStart(4, '0')}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

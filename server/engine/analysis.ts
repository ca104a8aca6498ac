// What is known of one text, and how far the work on it has come.
import { lineStarts } from '../../grammar/index.ts';
import { type Figure, figuresOf } from '../figures/index.ts';
import { type Installation, type PlainSite, plainSite, type Shelf } from '../model/index.ts';
import type { Finding, Verdict } from '../rules/index.ts';

/**
 * How far an analysis has come. `named`: read, and its names looked up; nothing is judged. `quick`: judged by the rules that are
 * quick enough for every key. `whole`: judged by all of them.
 */
export type Phase = 'named' | 'quick' | 'whole';

/**
 * An analysis in small steps, for whoever must not work long at a time; between them it may be left. What it yields is an analysis
 * that has come further than the last one, or nothing new.
 */
export type Steps = Generator<Analysis | undefined, Analysis>;

/** All that is known of one text. */
export interface Analysis {
  readonly path: string;
  /** The folder that no `use` may leave. */
  readonly root: string;
  readonly text: string;
  readonly phase: Phase;
  /** In the order of the text, then of the rules' names. */
  readonly findings: readonly Finding[];
  /** Findings that an acceptance in the file covers. */
  readonly accepted: readonly Finding[];
  /** What the file says, without a trace of how it is written. */
  readonly site: PlainSite;
  /** Where each line begins. */
  readonly lineStarts: readonly number[];
  /** @internal The installation with the place of every fact; its shape may change with any version. */
  readonly installation: Installation;
  /** @internal The models that the file can see. */
  readonly shelf: Shelf;
  /** @internal */
  readonly figures: readonly Figure[];
}

/** A class and not a literal with getters: these would cost each file a hidden class of its own. */
export class Judged implements Analysis {
  readonly path: string;
  readonly root: string;
  readonly text: string;
  readonly installation: Installation;
  readonly shelf: Shelf;
  readonly findings: readonly Finding[];
  readonly accepted: readonly Finding[];
  readonly phase: Phase;
  #starts: readonly number[] | undefined;

  constructor(path: string, root: string, text: string, installation: Installation, shelf: Shelf, verdict: Verdict, phase: Phase) {
    this.path = path;
    this.root = root;
    this.text = text;
    this.installation = installation;
    this.shelf = shelf;
    this.findings = verdict.findings;
    this.accepted = verdict.accepted;
    this.phase = phase;
  }

  get figures(): readonly Figure[] {
    return figuresOf(this.installation);
  }

  get lineStarts(): readonly number[] {
    return (this.#starts ??= lineStarts(this.text));
  }

  get site(): PlainSite {
    return plainSite(this.installation);
  }
}

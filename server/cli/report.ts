// What a run of `check` found, as plain data with lines and columns; each output format writes it in its own way.
import { relative } from 'node:path';
import {
  type Analysis,
  accountShown,
  type Finding,
  fullAccount,
  type JudgedShown,
  lineStarts,
  positionAt,
  type Related,
  type Severity,
} from '../engine/index.ts';
import { graveness, longestText, type ProblemKind, ruleOfProblem } from '../engine/inside.ts';
import { count } from './display.ts';
import { type FileText, type Flaw, type GateFile, shownFrom, withSlashes } from './files.ts';
import { lineShown, type Secret, secretsAmong } from './lines.ts';
import type { Sites } from './sites.ts';

/** A place as people count: lines and columns from 1, columns in UTF-16 units. */
export interface Spot {
  readonly line: number;
  readonly column: number;
}
export interface Range {
  readonly start: Spot;
  readonly end: Spot;
}

/** A path in a report: as programs read it, the same wherever the command was called; and as people are shown it. */
export interface ReportedPath {
  /** Seen from the root, or from the folder that all roots have in common. */
  readonly path: string;
  /** Seen from the current folder. */
  readonly shown: string;
}

export interface ReportedPlace extends ReportedPath {
  readonly message: string;
  readonly range: Range;
}

export interface ReportedFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly what: string;
  readonly why: string;
  readonly remedy: string;
  readonly range: Range;
  readonly related: readonly ReportedPlace[];
  readonly source: string;
  /** The line of the file that the finding starts on. */
  readonly sourceLine: string;
}

/** One thing that is judged in a file, or should be. */
export interface ReportedJudgement {
  readonly what: string;
  readonly verdict: JudgedShown['verdict'];
  readonly lacks: readonly string[];
  readonly range: Range;
}

/** A fact that is missing, and where it would be stated. */
export interface ReportedAsk extends ReportedPath {
  readonly fact: string;
  readonly question: string;
  readonly range: Range;
  readonly settles: number;
  /** True where it is a library that lacks it. */
  readonly ofLibrary: boolean;
}

/** What was judged of a file. */
export interface ReportedAccount {
  readonly draft: boolean;
  readonly judged: number;
  readonly of: number;
  readonly open: readonly ReportedJudgement[];
  readonly asks: readonly ReportedAsk[];
  /** Everything, judged or not; worked out only where it is asked for. */
  readonly all: () => readonly ReportedJudgement[];
}

export interface CheckedFile extends ReportedPath {
  readonly account: ReportedAccount;
  /** Worked out one after another, each time anew: a file can have very many. */
  readonly findings: () => Iterable<ReportedFinding>;
  /** How many of each severity these are. */
  readonly counts: Counts;
}

/** What was not read, and why. */
export interface Unread extends ReportedPath {
  readonly why: string;
}

/** The rule under which outputs tell what was not read, where they know only findings. */
export const unreadRule = 'unreadable-input';
export const unreadInWords = ({ why }: Unread): string => `This was not read: ${why}. Nothing in it has been looked at.`;

export type Counts = Readonly<Record<Severity, number>>;

/** What was judged in all files of a run. */
export interface JudgedTotals {
  readonly judged: number;
  readonly of: number;
  /** Facts that are missing, in all files; a fact of a library once. */
  readonly facts: number;
  /** What settles most, at most `mostAsked` of them, first what settles most. */
  readonly asks: readonly (ReportedAsk & { readonly sites: number })[];
  readonly drafts: number;
}

/** Questions that are put in a summary. */
export const mostAsked = 3;

export interface Totals {
  readonly files: number;
  readonly judged: JudgedTotals;
  readonly counts: Counts;
  /** How many findings acceptances in the files cover. */
  readonly accepted: number;
  /** What the baseline holds back. */
  readonly heldBack: Counts;
  readonly unreadable: number;
}

export const severities: readonly Severity[] = ['error', 'warning', 'note'];

/** True when a finding is grave enough to fail the run. */
export const fails = (severity: Severity, failOn: Severity): boolean => graveness[severity] >= graveness[failOn];

export function countsOf(findings: Iterable<{ readonly severity: Severity }>): Counts {
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findings) counts[severity]++;
  return counts;
}

export function sumOf(one: Counts, other: Counts): Counts {
  return { error: one.error + other.error, warning: one.warning + other.warning, note: one.note + other.note };
}

/** `3 errors, 1 warning`; empty where nothing is found. */
export function countsInWords({ error, warning, note }: Counts): string {
  const parts = [error > 0 ? count(error, 'error') : '', warning > 0 ? count(warning, 'warning') : '', note > 0 ? count(note, 'note') : ''];
  return parts.filter((part) => part !== '').join(', ');
}

/** The whole message in one line: what, why and what to do. */
export const messageOf = (finding: ReportedFinding): string =>
  [finding.what, finding.why, finding.remedy].filter((part) => part !== '').join(' ');

/** All that was found in a file, in the order of its places: by the rules, and what is wrong with the file itself. */
export function foundIn(read: FileText, analysis: Analysis | undefined): readonly Finding[] {
  const found = analysis?.findings ?? [];
  if (read.flaw === undefined) return [...found].sort(byPlace);
  return [flawFinding(read.flaw, read.text.length), ...found].sort(byPlace);
}

const byPlace = (a: Finding, b: Finding): number => a.start - b.start || a.end - b.end || (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0);

/** Characters of other files that are kept, to count lines in them. */
const mostOthers = 8_000_000;

/** Turns what was found in a file into what is reported of it. */
export class Reporter {
  readonly #folder: string;
  readonly #base: string;
  readonly #sites: Sites;
  readonly #others = new Map<string, readonly number[]>();
  #othersLength = 0;

  /** `folder`: the current one. `base`: what paths for programs are seen from. */
  constructor(folder: string, base: string, sites: Sites) {
    this.#folder = folder;
    this.#base = base;
    this.#sites = sites;
  }

  path(path: string): ReportedPath {
    return { path: pathFrom(this.#base, path), shown: shownFrom(this.#folder, path) };
  }

  /** `reported`: those of its findings that are to be told. */
  file({ path }: GateFile, read: FileText, analysis: Analysis | undefined, reported: readonly Finding[]): CheckedFile {
    const starts = analysis?.lineStarts ?? [0];
    const secrets = secretsAmong(analysis?.findings ?? []);
    const place = this.path(path);
    const finding = (found: Finding, lines: Lines): ReportedFinding => {
      const range = rangeOf(starts, found);
      const related = found.related.map((one) => this.#place(path, starts, one));
      const { rule, severity, what, why, remedy, source } = found;
      return { rule, severity, what, why, remedy, range, related, source, sourceLine: lines(range.start.line - 1) };
    };
    return {
      ...place,
      account: this.#account(path, starts, analysis),
      findings: function* () {
        const lines = linesOf(read.text, starts, secrets);
        for (const found of reported) yield finding(found, lines);
      },
      counts: countsOf(reported),
    };
  }

  #account(path: string, starts: readonly number[], analysis: Analysis | undefined): ReportedAccount {
    if (analysis === undefined) return nothingJudged;
    const { draft, judged, of, open, asks } = accountShown(analysis);
    const entry = (one: JudgedShown): ReportedJudgement => ({
      what: one.what,
      verdict: one.verdict,
      lacks: one.lacks,
      range: rangeOf(starts, one),
    });
    return {
      draft,
      judged,
      of,
      open: open.map(entry),
      asks: asks.map((ask) => {
        const { message: question, ...place } = this.#place(path, starts, {
          message: ask.question,
          start: ask.start,
          end: ask.end,
          ...(ask.path === undefined ? {} : { path: ask.path }),
        });
        return { fact: ask.fact, question, ...place, settles: ask.settles, ofLibrary: ask.path !== undefined };
      }),
      all: () => fullAccount(analysis).map(entry),
    };
  }

  #place(file: string, starts: readonly number[], related: Related): ReportedPlace {
    const { message } = related;
    const path = related.path === undefined ? file : this.#sites.wholePath(file, related.path);
    return { message, ...this.path(path), range: rangeOf(path === file ? starts : this.#startsOf(path), related) };
  }

  #startsOf(path: string): readonly number[] {
    let other = this.#others.get(path);
    if (other === undefined) {
      const read = this.#sites.read(path);
      const text = 'why' in read ? '' : read.text;
      if ((this.#othersLength += text.length) > mostOthers) {
        this.#others.clear();
        this.#othersLength = text.length;
      }
      this.#others.set(path, (other = lineStarts(text)));
    }
    return other;
  }
}

const nothingJudged: ReportedAccount = { draft: false, judged: 0, of: 0, open: [], asks: [], all: () => [] };

/** A line of a file as it may be shown, counted from 0. */
type Lines = (line: number) => string;

/** Findings come in the order of their lines, so one line is kept: it can be as long as the file. */
function linesOf(text: string, starts: readonly number[], secrets: readonly Secret[]): Lines {
  let known = -1;
  let shown = '';
  return (line) => {
    if (line !== known) shown = lineShown(text, starts, (known = line), secrets);
    return shown;
  };
}

/** A path seen from a folder, with forward slashes; from another one by `..`. */
function pathFrom(base: string, path: string): string {
  return withSlashes(relative(base, path));
}

function rangeOf(starts: readonly number[], { start, end }: { readonly start: number; readonly end: number }): Range {
  return { start: spotAt(starts, start), end: spotAt(starts, Math.max(start, end)) };
}

function spotAt(starts: readonly number[], offset: number): Spot {
  const { line, column } = positionAt(starts, offset);
  return { line: line + 1, column: column + 1 };
}

/** What is wrong with the file itself, told under the rule that the language has for it. */
function flawFinding(flaw: Flaw, length: number): Finding {
  const told = flawInWords(flaw);
  const at = flaw.kind === 'not-utf-8' ? flaw.at : 0;
  const rule = ruleOfProblem(told.rule);
  return {
    ...told,
    severity: rule.severity,
    start: at,
    end: flaw.kind === 'not-utf-8' ? Math.min(length, at + 1) : at,
    related: [],
    source: rule.source.text,
    fixes: [],
    tag: undefined,
    lacks: [],
  };
}

function flawInWords(flaw: Flaw): { readonly rule: ProblemKind } & Pick<Finding, 'what' | 'why' | 'remedy'> {
  const notLookedAt = 'Nothing in it has been looked at.';
  const saveAnew = 'Save it anew, with UTF-8 as its encoding.';
  switch (flaw.kind) {
    case 'too-large':
      return {
        rule: 'file-too-large',
        what: `This file has ${grouped(flaw.bytes)} bytes${flaw.orMore ? ' or more' : ''}; files of up to ${grouped(longestText)} characters are read.`,
        why: notLookedAt,
        remedy: 'One file describes one site: give each its own.',
      };
    case 'utf-16':
      return {
        rule: 'character-not-allowed',
        what: 'This file is written in UTF-16; only UTF-8 is read.',
        why: notLookedAt,
        remedy: saveAnew,
      };
    case 'not-utf-8':
      return {
        rule: 'character-not-allowed',
        what: `This file is not UTF-8 text: the byte 0x${flaw.byte.toString(16).toUpperCase().padStart(2, '0')} does not belong here.`,
        why: 'A text in another encoding can read other than it was meant.',
        remedy: saveAnew,
      };
  }
}

/** A whole number with its thousands apart. */
const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');

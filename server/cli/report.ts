// What a run of `check` found, as plain data with lines and columns; each output format is a function of it.
import { type Analysis, type Finding, lineStarts, positionAt, type Related, type Severity } from '../engine/index.ts';
import { graveness, longestText, type ProblemKind, ruleOfProblem } from '../engine/inside.ts';
import { count } from './display.ts';
import { type FileText, type Flaw, type GateFile, shownFrom } from './files.ts';
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

export interface ReportedPlace {
  readonly message: string;
  readonly path: string;
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

export interface CheckedFile {
  readonly path: string;
  readonly findings: readonly ReportedFinding[];
  /** How many findings an acceptance in the file covers. */
  readonly accepted: number;
}

export type Counts = Readonly<Record<Severity, number>>;

export interface Report {
  readonly version: string;
  readonly files: readonly CheckedFile[];
  readonly counts: Counts;
  readonly accepted: number;
  /** What the baseline holds back. */
  readonly heldBack: Counts;
  readonly unreadable: readonly { readonly path: string; readonly why: string }[];
  readonly failOn: Severity;
}

export const severities: readonly Severity[] = ['error', 'warning', 'note'];

/** True when a finding is grave enough to fail the run. */
export const fails = (severity: Severity, failOn: Severity): boolean => graveness[severity] >= graveness[failOn];

export function countsOf(findings: Iterable<{ readonly severity: Severity }>): Counts {
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findings) counts[severity]++;
  return counts;
}

/** `3 errors, 1 warning`; empty where nothing is found. */
export function countsInWords({ error, warning, note }: Counts): string {
  const parts = [error > 0 ? count(error, 'error') : '', warning > 0 ? count(warning, 'warning') : '', note > 0 ? count(note, 'note') : ''];
  return parts.filter((part) => part !== '').join(', ');
}

/** The whole message in one line: what, why and what to do. */
export const messageOf = (finding: ReportedFinding): string =>
  [finding.what, finding.why, finding.remedy].filter((part) => part !== '').join(' ');

/** Turns what was found in a file into what is reported of it. */
export class Reporter {
  readonly #folder: string;
  readonly #others = new Map<string, { readonly text: string; readonly starts: readonly number[] }>();

  readonly #sites: Sites;

  constructor(folder: string, sites: Sites) {
    this.#folder = folder;
    this.#sites = sites;
  }

  file(file: GateFile, read: FileText, analysis: Analysis | undefined): CheckedFile {
    const flaw = read.flaw === undefined ? [] : [flawFinding(read.flaw, read.text.length)];
    if (analysis === undefined || (analysis.findings.length === 0 && flaw.length === 0))
      return {
        path: file.shown,
        findings: flaw.map((finding) => this.#finding(file, read.text, [0], none, finding)),
        accepted: analysis?.accepted.length ?? 0,
      };
    const findings = [...flaw, ...analysis.findings].sort(
      (a, b) => a.start - b.start || a.end - b.end || (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0),
    );
    const secrets = secretsAmong(findings);
    return {
      path: file.shown,
      findings: findings.map((finding) => this.#finding(file, read.text, analysis.lineStarts, secrets, finding)),
      accepted: analysis.accepted.length,
    };
  }

  #finding(file: GateFile, text: string, starts: readonly number[], secrets: readonly Secret[], finding: Finding): ReportedFinding {
    const range = rangeOf(starts, finding);
    return {
      rule: finding.rule,
      severity: finding.severity,
      what: finding.what,
      why: finding.why,
      remedy: finding.remedy,
      range,
      related: finding.related.map((related) => this.#place(file, starts, related)),
      source: finding.source,
      sourceLine: lineShown(text, starts, range.start.line - 1, secrets),
    };
  }

  #place(file: GateFile, starts: readonly number[], related: Related): ReportedPlace {
    const { message } = related;
    const path = related.path === undefined ? file.path : this.#sites.wholePath(file.path, related.path);
    if (path === file.path) return { message, path: file.shown, range: rangeOf(starts, related) };
    let other = this.#others.get(path);
    if (other === undefined) {
      const read = this.#sites.read(path);
      const text = 'why' in read ? '' : read.text;
      this.#others.set(path, (other = { text, starts: lineStarts(text) }));
    }
    return { message, path: shownFrom(this.#folder, path), range: rangeOf(other.starts, related) };
  }
}

const none: readonly never[] = [];

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

// All findings of an installation: what reading it found, what the rules find, and what acceptances make of both.

import { firstIndex } from '../../grammar/index.ts';
import { type Body, type Installation, regimeOf } from '../model/index.ts';
import { mostTold, nearest } from '../vocabulary/index.ts';
import { allRules } from './all.ts';
import type { Problem, ProblemKind, Problems } from './problems.ts';
import {
  type Finding,
  graveness,
  type InstallationRule,
  isAsked,
  look,
  type ProblemRule,
  type ProblemRuleOf,
  type Report,
  type Rule,
  speaking,
} from './rule.ts';

export interface Verdict {
  /** In the order of the text, then of the rules' names. */
  readonly findings: readonly Finding[];
  /** Findings that an acceptance in the file covers. */
  readonly accepted: readonly Finding[];
}

const byName: ReadonlyMap<string, Rule> = new Map(allRules.map((rule) => [rule.name, rule]));
const installationRules: readonly InstallationRule[] = allRules.filter((rule) => rule.kind === 'installation');

/** The rules that look at a site: all of them, those for every key, and those that wait until the keys rest where a file is large. */
interface Asked {
  readonly all: readonly InstallationRule[];
  readonly quick: readonly InstallationRule[];
  readonly slow: readonly InstallationRule[];
}
const askedUnder = (body: Body): Asked => {
  const all = installationRules.filter((rule) => isAsked(rule, body));
  return { all, quick: all.filter(({ cost }) => cost === 'keystroke'), slow: all.filter(({ cost }) => cost === 'idle') };
};
const asked: Readonly<Record<Body, Asked>> = {
  europe: askedUnder('europe'),
  'north-america': askedUnder('north-america'),
  unstated: askedUnder('unstated'),
};
type Explaining = { readonly [Kind in ProblemKind]: ProblemRuleOf<Kind> };
const problemRules = allRules.filter((rule) => rule.kind === 'problem');
const explaining = Object.fromEntries(problemRules.map((rule) => [rule.name, rule])) as unknown as Explaining;
const fileRules = installationRules.filter((rule) => rule.scope === 'file');
const ofFile: Asked = { all: fileRules, quick: fileRules, slow: [] };
const rulesFor = (installation: Installation): Asked => (installation.kind === 'site' ? asked[regimeOf(installation).body] : ofFile);

export function ruleNamed(name: string): Rule | undefined {
  return byName.get(name);
}

/** The rule that explains a kind of problem; each has one. */
export function ruleOfProblem(kind: ProblemKind): ProblemRule {
  return explaining[kind];
}

/**
 * Judges an installation. `asOf` is the day, as YYYY-MM-DD, that acceptances and intervals are held against; the
 * verdict is a function of the files and that day alone.
 */
export function evaluate(installation: Installation, asOf: string): Verdict {
  const findings = ofReading(installation);
  let rule: InstallationRule;
  const report = (given: Report): void => {
    findings.push(findingOf(rule, given));
  };
  const hold = speaking(report);
  for (rule of rulesFor(installation).all) look(rule, installation, report, hold, asOf);
  return concluded(installation, findings, asOf, none);
}

/**
 * The same verdict in small steps, for an editor that must not wait: it yields between the rules, and once, before the
 * rules that take long, what the quick ones found.
 */
export function* judging(installation: Installation, asOf: string): Generator<Verdict | undefined, Verdict> {
  const findings = ofReading(installation);
  let rule: InstallationRule;
  const report = (given: Report): void => {
    findings.push(findingOf(rule, given));
  };
  const hold = speaking(report);
  const { quick, slow } = rulesFor(installation);
  for (rule of quick) {
    look(rule, installation, report, hold, asOf);
    yield undefined;
  }
  if (slow.length > 0) yield concluded(installation, [...findings], asOf, slow);
  for (rule of slow) {
    look(rule, installation, report, hold, asOf);
    yield undefined;
  }
  return concluded(installation, findings, asOf, none);
}

/** What reading the file found. */
function ofReading(installation: Installation): Finding[] {
  const findings: Finding[] = [];
  const { problems } = installation;
  for (const problem of problems.length > mostTold ? firstOfEachKind(problems) : problems) explain(problem, installation, findings);
  return findings;
}

/** At most `mostTold` of each kind; the last one kept says how many there are. */
function firstOfEachKind(problems: readonly Problem[]): Problem[] {
  const all = new Map<string, number>();
  for (const problem of problems) all.set(problem.kind, (all.get(problem.kind) ?? 0) + 1);
  const seen = new Map<string, number>();
  const kept: Problem[] = [];
  for (const problem of problems) {
    const count = (seen.get(problem.kind) ?? 0) + 1;
    seen.set(problem.kind, count);
    if (count > mostTold) continue;
    const ofAll = all.get(problem.kind) as number;
    kept.push(count < mostTold || ofAll === mostTold ? problem : { ...problem, ofAll });
  }
  return kept;
}

/** What the rule of its kind says of a problem. */
export function explanationOf<Kind extends ProblemKind>(problem: Problem<Kind>, text: string): Omit<Report, 'at'> {
  const rule: Explaining[Kind] = explaining[problem.kind];
  return rule.explain(problem, text);
}

function explain(problem: Problem, installation: Installation, findings: Finding[]): void {
  const related = (problem.related ?? none).map(({ start, end, note }) => ({ message: note, start, end }));
  const said = explanationOf(problem, installation.reading.tree.text);
  const { ofAll } = problem;
  const what = ofAll === undefined ? said.what : `${said.what} (This is the last one shown of ${ofAll} like it in this file.)`;
  findings.push(findingOf(explaining[problem.kind], { related, ...said, what, at: problem }));
}

function findingOf(rule: Rule, report: Report): Finding {
  const asked = report.severity ?? rule.severity;
  return {
    rule: rule.name,
    severity: graveness[asked] < graveness[rule.severity] ? asked : rule.severity,
    what: report.what,
    why: report.why ?? rule.why,
    remedy: report.remedy ?? rule.remedy,
    start: report.at.start,
    end: report.at.end,
    related: report.related ?? none,
    source: (report.source ?? rule.source).text,
    fixes: report.fixes ?? none,
    tag: report.unnecessary === true ? 'unnecessary' : undefined,
    lacks: report.lacks ?? none,
  };
}

const none: readonly never[] = [];

/** What acceptances and promises make of the findings. `pending`: rules that have not run yet; nothing is said of what depends on them. */
function concluded(installation: Installation, found: Finding[], asOf: string, pending: readonly Rule[]): Verdict {
  const { expects, expectsNo } = installation.reading;
  const verdict = accept(installation, found, asOf, pending);
  if (pending.length > 0 || (expects.length === 0 && expectsNo === undefined)) return verdict;
  // A promise hides nothing, and nothing hides from it: neither what is accepted nor what is found of acceptances.
  const all = inOrder([...verdict.findings, ...verdict.accepted]);
  const promised = new Set<Finding>();
  const broken: Finding[] = [];
  const guess = guesser();
  for (const { fact, within } of expects) {
    const name = fact.rule.text;
    const meant = foundIn(within, name, all);
    for (const finding of meant) promised.add(finding);
    if (meant.length > 0) continue;
    const detail = byName.has(name)
      ? ({ promised: 'finding', rule: name } as const)
      : ({ promised: 'finding of no rule', rule: name, meant: guess(name) } as const);
    explain({ kind: 'expectation-not-met', start: fact.rule.start, end: fact.rule.end, detail }, installation, broken);
  }
  if (expectsNo !== undefined) {
    const against = verdict.findings.filter(
      (finding) => graveness[finding.severity] >= graveness[expectsNo.gravest] && !promised.has(finding),
    );
    const first = against[0];
    if (first !== undefined) {
      const { start, end } = expectsNo.line;
      const detail = { promised: 'nothing', gravest: expectsNo.gravest, rule: first.rule, count: against.length } as const;
      const related = [{ start: first.start, end: first.end, note: first.what }];
      explain({ kind: 'expectation-not-met', start, end, detail, related }, installation, broken);
    }
  }
  return { ...verdict, findings: inOrder([...verdict.findings, ...broken]) };
}

/** Guesses which rule is meant, for as many names as are told one by one: each guess takes a look at every rule. */
function guesser(): (name: string) => string | undefined {
  let count = 0;
  return (name) => (count++ < mostTold ? nearest(name, byName.keys()) : undefined);
}

interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** What a rule finds that begins in a stretch, or in the whole file where none is given; of findings in their order. */
function foundIn(within: Stretch | undefined, rule: string, findings: readonly Finding[]): readonly Finding[] {
  const start = within?.start ?? 0;
  const end = within?.end ?? Number.POSITIVE_INFINITY;
  const found: Finding[] = [];
  for (let at = firstIndex(findings, (finding) => finding.start >= start); at < findings.length; at++) {
    const finding = findings[at] as Finding;
    if (finding.start >= end) break;
    if (finding.rule === rule) found.push(finding);
  }
  return found;
}

/** `pending`: of these rules nobody can say yet what an acceptance matches. */
function accept(installation: Installation, found: Finding[], asOf: string, pending: readonly Rule[]): Verdict {
  inOrder(found);
  if (installation.accepts.length === 0) return { findings: found, accepted: none };
  const findings: Finding[] = [];
  const guess = guesser();
  const matched = new Set<Finding>();
  for (const { fact, within } of installation.accepts) {
    const name = fact.rule.text;
    const rule = byName.get(name);
    const { line } = fact;
    const about = <Kind extends ProblemKind>(kind: Kind, detail: Problems[Kind]): void =>
      explain({ kind, start: fact.rule.start, end: fact.rule.end, detail } as Problem, installation, findings);
    if (rule === undefined) {
      about('acceptance-of-unknown-rule', { rule: name, meant: guess(name) });
      continue;
    }
    if (rule.acceptable === false) {
      about('acceptance-not-allowed', { rule: name, line, asError: false });
      continue;
    }
    if (pending.includes(rule)) continue;
    const meant = foundIn(within, name, found);
    if (fact.until < asOf) about('acceptance-expired', { rule: name, line, until: fact.until, still: meant.length });
    // A form that nobody has filled in accepts nothing.
    else if (fact.reason.trim() === '') about('acceptance-without-reason', { rule: name });
    else {
      if (fact.initials === undefined || fact.initials.trim() === '') about('acceptance-unsigned', { rule: name });
      if (meant.length === 0) about('acceptance-unused', { rule: name, line });
      const open = rule.acceptable === 'warnings' ? meant.filter(({ severity }) => severity !== 'error') : meant;
      if (open.length < meant.length) about('acceptance-not-allowed', { rule: name, line, asError: true });
      for (const finding of open) matched.add(finding);
    }
  }
  for (const finding of found) if (!matched.has(finding)) findings.push(finding);
  return { findings: inOrder(findings), accepted: inOrder([...matched]) };
}

const byPlace = (a: Finding, b: Finding): number => a.start - b.start || a.end - b.end || (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0);
const inOrder = (findings: Finding[]): Finding[] => findings.sort(byPlace);

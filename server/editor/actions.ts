// What can be done about what is found, in the order in which it is offered: what mends it, what adds what is missing, the page
// that says what to do, and last of all to accept it.
import type { Span } from '../../grammar/index.ts';
import { type Analysis, type Edit, type FixClass, fixesOf } from '../engine/index.ts';
import type { Finding } from '../rules/index.ts';
import { acceptance, additions, type Insertion, missingLines } from './insertions.ts';

export interface FindingAction {
  readonly about: 'fix' | 'addition' | 'explanation' | 'acceptance';
  readonly title: string;
  /** The finding that it is about, by its place in the list. */
  readonly finding: number;
  readonly class: FixClass;
  readonly work: { readonly edits: readonly Edit[] } | { readonly form: Insertion } | { readonly rule: string };
}

/**
 * The actions for the findings that touch a stretch, of errors before those of warnings and notes, and acceptances last. `explains`: the
 * reader can be shown the page of a rule; where not, an error for which nothing else can be done is not offered to be accepted either,
 * for to accept it would be the only thing to do. Where very many findings are touched, forms are left out: nobody chooses from hundreds.
 */
export function findingActions(analysis: Analysis, range: Span, today: string, explains: boolean): FindingAction[] {
  const touched = analysis.findings.flatMap((finding, index) =>
    finding.start <= range.end && finding.end >= range.start ? [{ finding, index }] : [],
  );
  const actions: FindingAction[] = [];
  const told = new Set<string>();
  const add = (key: string, action: FindingAction): void => {
    if (told.has(key)) return;
    told.add(key);
    actions.push(action);
  };
  const addForm = (about: 'addition' | 'acceptance', index: number, form: Insertion, key: string): void =>
    add(`${about} ${form.edit.start} ${key}`, { about, title: form.title, finding: index, class: 'review', work: { form } });

  // What is said of an error stands before what is said of a note at the same place.
  for (const severity of ['error', 'warning', 'note'] as const) {
    const grave = touched.filter(({ finding }) => finding.severity === severity);
    for (const { finding, index } of grave)
      for (const fix of fixesOf(analysis, finding))
        actions.push({ about: 'fix', title: fix.title, finding: index, class: fix.class, work: { edits: fix.edits } });
    for (const { finding, index } of touched.length > mostWithForms ? [] : grave) {
      const all = lacksMore(grave, finding) ? missingLines(analysis, finding.start) : undefined;
      for (const form of [...(all === undefined ? [] : [all]), ...additions(analysis, finding)])
        addForm('addition', index, form, form.title);
    }
    if (explains)
      for (const { finding, index } of grave)
        add(`explanation ${finding.rule}`, {
          about: 'explanation',
          title: `Explain “${finding.rule}”`,
          finding: index,
          class: 'review',
          work: { rule: finding.rule },
        });
  }
  if (actions.length === 0 && touched.some(({ finding }) => finding.severity === 'error')) return actions;
  const mended = new Set(actions.map(({ finding }) => finding));
  for (const { finding, index } of touched) {
    if (finding.severity === 'error' && !explains && !mended.has(index)) continue;
    const form = acceptance(analysis, finding, today);
    // One form for each place: an acceptance holds for all that its rule finds in the block.
    if (form !== undefined) addForm('acceptance', index, form, finding.rule);
  }
  return actions;
}

const mostWithForms = 50;

/** Of a block that lacks several lines, all of them at once stand before each by itself. */
const lacksMore = (touched: readonly { readonly finding: Finding }[], { start, lacks }: Finding): boolean =>
  lacks.length > 0 && touched.filter(({ finding }) => finding.start === start && finding.lacks.length > 0).length > 1;

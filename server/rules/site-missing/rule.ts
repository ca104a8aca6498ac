import { headPlace, type Installation } from '../../model/index.ts';
import { installationRule, ofTheLanguage } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'site-missing',
  severity: 'error',
  title: 'A file describes a gate and does not say where it stands.',
  why: 'Which rules hold and who uses the gate decide what is safe there; without them no safeguard is judged.',
  remedy: 'Write a “site” block that says which rules hold and who uses the gate.',
  source: ofTheLanguage,
  acceptable: false,
  check: (installation, report) => {
    if (installation.site !== undefined) return;
    // A `site` that has no braces was reported as that.
    if (installation.reading.problems.some((problem) => problem.kind === 'block-without-body' && problem.detail['word'] === 'site')) return;
    const first = firstBlock(installation);
    if (first === undefined) return;
    report({ at: headPlace(first), what: `The file describes ${quoted(headOf(first))} and has no “site” block.` });
  },
});

type Block = Installation['leaves'][number] | Installation['panels'][number] | Installation['drives'][number] | Installation['sensors'][number] | Installation['controls'][number] | Installation['cables'][number] | NonNullable<Installation['motion']>;

function firstBlock({ leaves, drives, sensors, controls, panels, cables, motion }: Installation): Block | undefined {
  let first: Block | undefined;
  for (const list of [leaves, drives, sensors, controls, panels, cables, motion === undefined ? [] : [motion]])
    for (const block of list) if (first === undefined || block.at.start < first.at.start) first = block;
  return first;
}

const headOf = (block: Block): string => `${block.at.word?.text ?? ''} ${block.name}`.trim();

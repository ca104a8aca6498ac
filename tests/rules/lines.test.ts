// Files are written line by line, and a rule meets them half written: every example of its page is judged without each of its
// lines, without each of its blocks, and without each name of a model. Nothing may fail then, and nothing may be said that was
// not worked out: no message holds “undefined” or a number that is none, and every finding stands where there is text.
import { describe, expect, test } from 'vitest';
import { explanationOf } from '../../server/rules/evaluate.ts';
import { type Rule, ruleNamed } from '../../server/rules/index.ts';
import { look, type Report, speaking } from '../../server/rules/rule.ts';
import { faultsOf } from '../kit/messages.ts';
import { blocksOf, foldersWith, installationOf, readPage } from '../kit/pages.ts';

/** The text without each of its lines, each of its outermost blocks, and each name of a model, one at a time. */
function lessOf(text: string): string[] {
  const lines = text.split('\n');
  const without = (from: number, to: number): string => [...lines.slice(0, from), ...lines.slice(to)].join('\n');
  return lines.flatMap((line, i) => {
    const less = line.trim() === '' ? [] : [without(i, i + 1)];
    const named = /^([a-z-]+ \S+) : \S+ \{/.exec(line);
    if (named !== null) less.push([...lines.slice(0, i), `${named[1]} {`, ...lines.slice(i + 1)].join('\n'));
    const end = /^[a-z].*\{/.test(line) ? lines.indexOf('}', i) : -1;
    if (end > i) less.push(without(i, end + 1));
    return less;
  });
}

test('lines, blocks and models are taken away one at a time', () => {
  expect(lessOf('a\nleaf x : y {\n  z\n}\n')).toEqual([
    'leaf x : y {\n  z\n}\n',
    'a\n  z\n}\n',
    'a\nleaf x {\n  z\n}\n',
    'a\n',
    'a\nleaf x : y {\n}\n',
    'a\nleaf x : y {\n  z\n\n'.replace('\n\n', '\n'),
  ]);
});

describe.each(foldersWith('rules', 'rule.ts'))('%s', (name) => {
  const rule = ruleNamed(name) as Rule;
  const blocks = blocksOf(readPage('rules', name)).filter((block) => block.kind !== 'fixed' && block.text.length < 4000);
  test('its examples with something missing', () => {
    for (const block of blocks)
      for (const text of lessOf(block.text)) {
        const installation = installationOf(text, block.files);
        const said: Report[] = [];
        if (rule.kind === 'problem')
          for (const problem of installation.problems)
            if (problem.kind === name) said.push({ ...explanationOf(problem, text), at: problem });
        if (rule.kind === 'installation') {
          const report = (given: Report): void => void said.push(given);
          look(rule, installation, report, speaking(report), block.asOf);
          rule.holds?.(installation, ({ value, limit, subject }, at) => {
            expect(value, `${subject}\n${text}`).not.toBeNaN();
            expect(limit, `${subject}\n${text}`).not.toBeNaN();
            expect(at.start, text).toBeLessThanOrEqual(at.end);
          });
        }
        for (const { at, what, why, remedy, related } of said) {
          for (const sentence of [what, why, remedy])
            if (sentence !== undefined && faultsOf(sentence, text).length > 0)
              expect.fail(`${faultsOf(sentence, text).join('\n')}\n${text}`);
          if (!(at.start <= at.end && at.end <= text.length)) expect.fail(`stands at ${at.start} to ${at.end} of\n${text}`);
          for (const { message, start, end } of related ?? [])
            if (/undefined|NaN/.test(message) || !(start <= end)) expect.fail(`“${message}” points at ${start} to ${end}, for\n${text}`);
        }
      }
  });
});

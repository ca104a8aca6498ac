// Workflow commands that GitHub shows beside the lines of a change.
import { visible, visiblePath } from '../display.ts';
import { messageOf, unreadInWords, unreadRule } from '../report.ts';
import type { Beginning, Output, Writer } from './output.ts';

export const output: Output = {
  name: 'github',
  summary: 'workflow commands that GitHub shows beside the lines of a change',
  reader: 'program',
  begin,
};

const commands = { error: 'error', warning: 'warning', note: 'notice' } as const;

function begin({ send }: Beginning): Writer {
  return {
    file: ({ path, findings }) => {
      for (const finding of findings()) {
        const { start, end } = finding.range;
        // Columns are only understood where the range stays on one line.
        const columns = start.line === end.line ? `,col=${start.column},endColumn=${end.column}` : '';
        send(
          `::${commands[finding.severity]} file=${property(path)},line=${start.line},endLine=${end.line}${columns},title=${property(finding.rule)}::${data(messageOf(finding))}\n`,
        );
      }
    },
    unread: (unread) => send(`::error file=${property(unread.path)},title=${unreadRule}::${data(unreadInWords(unread))}\n`),
    end: () => undefined,
  };
}

const data = (text: string): string => visible(text).replace(/%/g, '%25');
/** Line ends have an escape of GitHub's own; what else would do something is shown. */
const property = (text: string): string =>
  text
    .split(/([\r\n])/)
    .map((part) =>
      part === '\r' ? '%0D' : part === '\n' ? '%0A' : visiblePath(part).replace(/%/g, '%25').replace(/:/g, '%3A').replace(/,/g, '%2C'),
    )
    .join('');

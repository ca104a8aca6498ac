// One line for each finding, for editors’ tasks and for search tools: `PATH:LINE:COLUMN-LINE:COLUMN: SEVERITY: WHAT [RULE]`.
import { linePath, visible } from '../display.ts';
import { unreadInWords, unreadRule } from '../report.ts';
import type { Beginning, Output, Writer } from './output.ts';

export const output: Output = {
  name: 'lines',
  summary: 'one line for each finding, for editors’ tasks and for search',
  reader: 'program',
  begin,
};

function begin({ send }: Beginning): Writer {
  return {
    file: ({ shown, findings }) => {
      const path = pathOf(shown);
      for (const { range, severity, what, rule } of findings())
        send(
          `${path}:${range.start.line}:${range.start.column}-${range.end.line}:${range.end.column}: ${severity}: ${told(what)} [${rule}]\n`,
        );
    },
    unread: (unread) => send(`${pathOf(unread.shown)}:1:1-1:1: error: ${told(unreadInWords(unread))} [${unreadRule}]\n`),
    end: () => undefined,
  };
}

const told = (text: string): string => visible(text).replace(/\s+/g, ' ');
/** A colon before a digit would end the path for who reads the line. */
const pathOf = (path: string): string => linePath(path).replace(/:(?=\d)/g, '<003A>');

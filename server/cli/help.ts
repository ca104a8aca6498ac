import type { Options } from './arguments.ts';
import type { Command } from './command.ts';

/** The overview. */
export function overview(commands: readonly Command[]): string {
  const widest = Math.max(...commands.map(({ usage }) => usage.length));
  const lines = commands.map(({ usage, summary }) => `  pintle ${usage.padEnd(widest)}  ${summary}\n`);
  return `Pintle describes a powered-gate installation as text, works out what follows from it, and says what is wrong.

${lines.join('')}
  pintle help COMMAND  tells more of one.  pintle --version  tells the version.

A figure is no test: measure the forces on the gate itself. Local rules and licensed practice prevail. Isolate the mains
before you open a panel.
`;
}

/** What there is to know of one command. */
export function pageOf({ usage, summary, options, details }: Command): string {
  return `pintle ${usage}\n\n${summary}\n\n${optionLines(options)}${details}\n`;
}

function optionLines(options: Options): string {
  const rows = Object.entries(options).map(
    ([name, { value, help }]) => [`--${name}${value === undefined ? '' : ' ' + value}`, help] as const,
  );
  if (rows.length === 0) return '';
  const widest = Math.max(...rows.map(([name]) => name.length));
  return rows.map(([name, help]) => `  ${name.padEnd(widest)}  ${help}\n`).join('') + '\n';
}

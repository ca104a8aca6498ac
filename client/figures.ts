// The figures of a file as a plain text that can be read, searched and copied.
import type { FigureAnswer } from '../server/lsp/requests.ts';

export function figuresAsText(uri: string, figures: readonly FigureAnswer[]): string {
  const file = decodeURIComponent(uri.split('/').at(-1) ?? uri);
  if (figures.length === 0) return `Nothing can be worked out from ${file} yet: it lacks the facts that figures need.\n`;
  const lines = [`Figures of ${file}`, 'Worked out from what the file says. A figure is no test: measure the forces on site.', ''];
  for (const figure of [...figures].sort((a, b) => a.line - b.line || (a.id < b.id ? -1 : 1))) {
    lines.push(`${figure.id} = ${figure.shown}`);
    lines.push(`    ${figure.title} (line ${figure.line + 1})`);
    lines.push(`    ${figure.formula}`);
    for (const input of figure.inputs)
      lines.push(`      ${input.name} = ${input.shown}${input.from === undefined ? '' : `   [${input.from}]`}`);
    lines.push(`    Source: ${figure.source}`, '');
  }
  return lines.join('\n');
}

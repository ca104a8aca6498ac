// Markdown for hovers and tooltips. What comes from a file is never read as markup.

/** A text of a file's author, with everything that Markdown or HTML would act on taken literally. */
export function escape(text: string): string {
  return text
    .replace(/[\r\n]+/g, ' ')
    .replace(/[\\`*_[\]<>|~&]/g, '\\$&')
    .replace(/:(?=\/\/)/g, '\\:')
    .replace(/^(\s*)(?=[-+]\s|#|=+\s*$)/, '$1\\')
    .replace(/^(\s*\d+)(?=[.)]\s)/, '$1\\');
}

/** Code in a line: `text`, whatever stands in it. */
export function code(text: string): string {
  const clean = text.replace(/[\r\n]+/g, ' ');
  const longest = Math.max(0, ...[...clean.matchAll(/`+/g)].map((run) => run[0].length));
  const fence = '`'.repeat(longest + 1);
  const pad = clean.startsWith('`') || clean.endsWith('`') || clean === '' ? ' ' : '';
  return fence + pad + clean + pad + fence;
}

/** A stretch of a gate file, coloured as such. */
export function codeBlock(text: string): string {
  const longest = Math.max(2, ...[...text.matchAll(/`+/g)].map((run) => run[0].length));
  const fence = '`'.repeat(longest + 1);
  return `${fence}pintle\n${text}\n${fence}`;
}

/** Markdown as plain text, for editors that show no markup. Only what this file and its callers write is undone. */
export function plain(markdown: string): string {
  return markdown
    .replace(/^(`{3,})pintle\n([\s\S]*?)\n\1$/gm, '$2')
    .replace(/\*\*(.+?)\*\*/g, '$1')
    .replace(/(?<!\\)`([^`]+)`/g, '$1')
    .replace(/\\([\\`*_[\]<>|~&:\-+#=.)])/g, '$1')
    .replace(/ {2}\n/g, '\n');
}

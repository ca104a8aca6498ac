// Markdown for hovers and tooltips. What comes from a file is never read as markup.

/**
 * A text of a file's author, with everything that Markdown or HTML would act on taken literally, and nothing in it that an
 * editor would make a link of by itself: `www.…`, `name@…`, `//…` and `word.word`.
 */
export function escape(text: string): string {
  return (
    text
      .replace(/[\r\n]+/g, ' ')
      // More than one blank at the left would be code.
      .replace(/^\s+/, ' ')
      .replace(/[\\`*_[\]<>|~&@]/g, '\\$&')
      .replace(/\/\//g, '/\\/')
      .replace(/(?<=www)\.|\.(?=\p{L})/giu, '\\.')
      .replace(/^( ?)(?=[-+](?:\s|$)|--|#|=+\s*$)/, '$1\\')
      .replace(/^( ?\d+)(?=[.)](?:\s|$))/, '$1\\')
  );
}

/** Code in a line: `text`, whatever stands in it. */
export function code(text: string): string {
  const clean = text.replace(/[\r\n]+/g, ' ');
  const longest = Math.max(0, ...[...clean.matchAll(/`+/g)].map((run) => run[0].length));
  const fence = '`'.repeat(longest + 1);
  // One blank at either end is taken away where both have one, unless there is nothing else.
  const pad = /^`|`$|^ .* $|^$/s.test(clean) && !/^ +$/.test(clean) ? ' ' : '';
  return fence + pad + clean + pad + fence;
}

/** A stretch of a gate file, coloured as such. */
export function codeBlock(text: string): string {
  const longest = Math.max(2, ...[...text.matchAll(/`+/g)].map((run) => run[0].length));
  const fence = '`'.repeat(longest + 1);
  return `${fence}pintle\n${text}\n${fence}`;
}

/** What this file and its callers write, piece by piece: a stretch of code, code in a line, a sign taken literally, bold, a line end. */
const written = /^(`{3,})pintle\n([\s\S]*?)\n\1$|(`+)([\s\S]*?[^`])\3(?!`)|\\([!-/:-@[-`{-~])|\*\*| {2}(?=\n)/gm;

/** Markdown as plain text, for editors that show no markup. Only what this file and its callers write is undone. */
export function plain(markdown: string): string {
  return markdown.replace(written, (_, _fence, block?: string, _run?: string, inline?: string, sign?: string) => {
    if (inline !== undefined) return /^ .* $/s.test(inline) && inline.trim() !== '' ? inline.slice(1, -1) : inline;
    return block ?? sign ?? '';
  });
}

// The page's frame. Everything that a file says comes later, as text, through page/page.ts.

export interface PageParts {
  /** Where the style sheet may come from, as the editor names it. */
  readonly source: string;
  /** Fresh for each page: at least 128 bits that nobody can guess. */
  readonly nonce: string;
  readonly script: string;
  readonly style: string;
}

/**
 * Nothing is loaded but this one script and this one style sheet, nothing is sent, nothing is framed; a picture only from what the page
 * itself has made, to save it.
 */
export const policy = ({ source, nonce }: Pick<PageParts, 'source' | 'nonce'>): string =>
  `default-src 'none'; script-src 'nonce-${nonce}'; style-src ${source}; img-src blob:; base-uri 'none'; form-action 'none'`;

const escaped = (text: string): string => text.replace(/[&<>"']/g, (letter) => `&#${letter.charCodeAt(0)};`);

export function pageHtml(parts: PageParts): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escaped(policy(parts))}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Preview</title>
<link rel="stylesheet" href="${escaped(parts.style)}">
</head>
<body data-vscode-context='{"preventDefaultContextMenuItems": true}'>
<div id="page"></div>
<script nonce="${escaped(parts.nonce)}" src="${escaped(parts.script)}"></script>
</body>
</html>
`;
}

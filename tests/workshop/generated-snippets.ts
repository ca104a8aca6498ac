// The templates for the editor's own list of snippets. They have no prefix there: in the text the server offers them, and
// leaves out what a file holds already.
import { asSnippet, templatePieces, templates } from '../../server/editor/snippets.ts';

interface Snippet {
  readonly description: string;
  readonly body: readonly string[];
}

/** By their names in words: `Swing pair`. Indented as the language is; the editor makes that its own. */
export function snippets(): Record<string, Snippet> {
  return Object.fromEntries(
    templates().map((template) => {
      const title = template.name.charAt(0).toUpperCase() + template.name.slice(1).replaceAll('-', ' ');
      const body = asSnippet(templatePieces(template, new Set())).split('\n');
      return [title, { description: template.doc, body }];
    }),
  );
}

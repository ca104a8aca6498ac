// Places in a file that lead somewhere: to a library, to the page of a rule.
import type { Span } from '../../grammar/index.ts';
import type { Analysis } from '../engine/index.ts';
import { ruleNamed } from '../rules/index.ts';
import { mentionsOf } from './names.ts';

export type TextLink = Span & ({ readonly kind: 'file'; readonly path: string } | { readonly kind: 'rule'; readonly name: string });

/** All links, in the order of the text. A path is linked as it would be read, whether or not a file is there. */
export function links(analysis: Analysis): TextLink[] {
  const found: TextLink[] = [];
  for (const { start, end, meaning } of mentionsOf(analysis)) {
    if (meaning.kind === 'file') {
      // What stands between the quotes.
      const isQuoted = end - start > 2 && analysis.text.charAt(start) === '"';
      found.push({
        start: isQuoted ? start + 1 : start,
        end: isQuoted && analysis.text.charAt(end - 1) === '"' ? end - 1 : end,
        kind: 'file',
        path: meaning.path,
      });
    } else if (meaning.kind === 'rule' && ruleNamed(meaning.name) !== undefined)
      found.push({ start, end, kind: 'rule', name: meaning.name });
  }
  return found;
}

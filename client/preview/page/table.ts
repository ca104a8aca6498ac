// A drawing's facts as a table.
import type { DrawingAnswer } from '../../../server/lsp/requests.ts';
import { make } from './elements.ts';

export function tableOf({ caption, heads, rows }: DrawingAnswer['table']): HTMLTableElement {
  const head = make('tr', {}, ...heads.map((text) => make('th', { scope: 'col', dir: 'auto' }, text)));
  const body = rows.map((row) =>
    make(
      'tr',
      {},
      ...row.map((text, column) => (column === 0 ? make('th', { scope: 'row', dir: 'auto' }, text) : make('td', { dir: 'auto' }, text))),
    ),
  );
  return make('table', {}, make('caption', { dir: 'auto' }, caption), make('thead', {}, head), make('tbody', {}, ...body));
}

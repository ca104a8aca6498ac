import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type DrawingFileAnswer, drawingRequest, type PreviewAnswer, previewRequest } from '../../server/lsp/requests.ts';
import { site } from '../editor/bench.ts';
import { within } from '../kit/marker.ts';
import { start } from './start.ts';

test('an open text is drawn as it stands now, with ranges in it', async () => {
  const { client, place } = await start();
  const uri = place.uriOf('gates/north.gate');
  const text = site();
  await client.open(uri, text);
  const shown = await client.request<PreviewAnswer>(previewRequest, { uri });
  expect(shown.title).toBe('Heron Court');
  expect(shown.drawings.map(({ id }) => id)).toEqual(['plan', 'timing', 'force', 'wiring']);
  expect(shown.drawings[0]?.svg).toMatch(/^<svg /);
  const document = TextDocument.create(uri, 'pintle', 0, text);
  const textOf = (id: string): string => document.getText(shown.things.find((each) => each.id === id)?.range);
  expect(textOf('leaf.west')).toMatch(/^leaf west \{/);
  expect(textOf('terminal.main.T1')).toBe('T1');
  expect(textOf('motion.dwell')).toBe('dwell 25 s');
  // Plain data: no offsets of the engine go out.
  expect(Object.keys(shown.things[0] ?? {}).sort()).toEqual(['id', 'label', 'range']);

  await client.edit(uri, { ...within(text, '|Heron Court|'), text: 'Heron “Yard”' });
  expect((await client.request<PreviewAnswer>(previewRequest, { uri })).title).toBe('Heron “Yard”');
});

test('a file that is not open, one that is not there, and one drawing by itself', async () => {
  const { client, place } = await start({}, { 'gates/shut.gate': site() });
  const uri = place.uriOf('gates/shut.gate');
  expect((await client.request<PreviewAnswer>(previewRequest, { uri })).drawings.length).toBe(4);
  const nothing = await client.request<PreviewAnswer>(previewRequest, { uri: place.uriOf('gates/none.gate') });
  expect(nothing).toMatchObject({ drawings: [], things: [], title: '' });
  const file = await client.request<DrawingFileAnswer>(drawingRequest, { uri, id: 'wiring', theme: 'print' });
  expect(file.svg).toContain('<style>');
  expect(file.width).toBeGreaterThan(400);
  expect(await client.request<DrawingFileAnswer>(drawingRequest, { uri, id: 'no such', theme: 'light' })).toEqual({
    svg: '',
    width: 0,
    height: 0,
  });
  // A theme that there is not is drawn as on paper in the light, and not refused.
  expect((await client.request<DrawingFileAnswer>(drawingRequest, { uri, id: 'plan', theme: 'toString' })).svg).toContain('#ffffff');
});

import { describe, expect, test } from 'vitest';
import { CancellationTokenSource, LSPErrorCodes } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type DrawingFileAnswer, drawingRequest, figuresRequest, type PreviewAnswer, previewRequest } from '../../server/lsp/requests.ts';
import { kinds } from '../bench/growing.mjs';
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

describe('of a long text', () => {
  const text = (kinds['gates'] as (lines: number) => string)(3000);
  // A clock that goes on by a millisecond whenever somebody looks at it: so a rest is due after so many steps, however quick the machine.
  const host = (): { readonly now: () => number } => {
    let clock = 0;
    return { now: () => clock++ };
  };
  const opened = async (): Promise<{ readonly client: Awaited<ReturnType<typeof start>>['client']; readonly uri: string }> => {
    const { client, place } = await start({ host: host() });
    const uri = place.uriOf('gates/long.gate');
    await client.open(uri, text);
    await client.pullOf(uri);
    return { client, uri };
  };

  test.each([previewRequest, figuresRequest])('whoever points at a word is answered before %s is', async (request) => {
    const { client, uri } = await opened();
    const answered: string[] = [];
    const [long, hover] = [
      client.request(request, { uri }).then(() => answered.push('long')),
      client.request('textDocument/hover', client.at(uri, 'leaf |west-0')).then(() => answered.push('hover')),
    ];
    await Promise.all([long, hover]);
    expect(answered).toEqual(['hover', 'long']);
    expect(client.logged.filter((line) => line.startsWith('preview took'))).toEqual([]);
  });

  test('an edit makes an end of it, and so does whoever does not wait for it any more', async () => {
    const { client, uri } = await opened();
    const stale = client.request(previewRequest, { uri }).catch((error: { code: number }) => error.code);
    await client.edit(uri, { ...within(text, 'site "|Growing|"'), text: 'Grown' });
    expect(await stale).toBe(LSPErrorCodes.ContentModified);
    const source = new CancellationTokenSource();
    const cancelled = client.connection.sendRequest(previewRequest, { uri }, source.token).catch((error: { code: number }) => error.code);
    await client.request('textDocument/hover', client.at(uri, 'leaf |west-0'));
    source.cancel();
    expect(await cancelled).toBe(LSPErrorCodes.RequestCancelled);
    expect((await client.request<PreviewAnswer>(previewRequest, { uri })).title).toBe('Grown');
  });
});

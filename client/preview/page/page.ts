// The preview's page: drawings beside the text. Whatever a file says comes in as text or through the allow-list.
import type { DrawingAnswer, PreviewAnswer } from '../../../server/lsp/requests.ts';
import { type ExportFormat, type FromPage, type Kept, readKept, type ToPage, type View } from '../messages.ts';
import { inFileOrder } from '../things.ts';
import { announcement, tabText, thingText, verdict, verdictKind } from '../words.ts';
import { Drawing, importDrawing } from './drawing.ts';
import { button, icon, make, say } from './elements.ts';
import { Parts } from './parts.ts';
import { Player } from './player.ts';
import { rasterise } from './raster.ts';
import { tableOf } from './table.ts';
import { Viewport } from './viewport.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromPage): void; getState(): unknown; setState(state: Kept): void };

const editor = acquireVsCodeApi();
const send = (message: FromPage): void => editor.postMessage(message);
const kept = readKept(editor.getState());

/** A reader who types hears of the update once the text has been at rest for so long, in milliseconds. */
const restBeforeWords = 1500;

// What is shown, and how.
let uri = kept.uri;
let stays = kept.stays ?? false;
let answer: PreviewAnswer | undefined;
let chosen = kept.drawing;
let asTable = kept.asTable ?? false;
let partsHidden = kept.partsHidden ?? false;
const views = new Map<string, View>(Object.entries(kept.views ?? {}));
let drawing: Drawing | undefined;
/** The text that `drawing` was made of. */
let drawn = '';
let cursor: readonly string[] = [];
let selected: string | undefined;
let pointed: string | undefined;

// The frame.
const title = make('h1', { dir: 'auto' }, 'Preview');
const verdictButton = make('button', { type: 'button', class: 'verdict', title: 'Show the problems', hidden: true });
const stay = button('Stay with this file', () => setStays(!stays), { title: 'Go on showing this file when another one is active' });
const trouble = make('p', { class: 'trouble', role: 'alert', hidden: true, dir: 'auto' });
const tabs = make('div', { class: 'tabs', role: 'tablist', 'aria-label': 'Drawings', hidden: true });
const description = make('p', { id: 'description', class: 'unseen', dir: 'auto' });
const frameOfDrawing = make('div', {
  class: 'viewport',
  id: 'viewport',
  tabindex: 0,
  role: 'group',
  'aria-label': 'Drawing; plus and minus zoom, zero fits, arrows move',
  'aria-describedby': 'description',
});
const lacks = make('p', { class: 'lacks', dir: 'auto' });
const tableBox = make('div', { class: 'table-box', tabindex: 0, role: 'group', 'aria-label': 'The drawing as a table' });
const caption = make('p', { class: 'caption', dir: 'auto' });
const announced = make('p', { class: 'unseen', role: 'status', id: 'announced' });
const waiting = make('p', { class: 'waiting' }, 'Drawing …');

const viewport = new Viewport(frameOfDrawing, () => {
  if (chosen !== undefined && drawing !== undefined) views.set(chosen, viewport.current);
  drawing?.drawMarks();
  showZoom();
  keep();
});
const player = new Player((time) => {
  if (answer?.cycle !== undefined) drawing?.moveTo(answer.cycle, time);
  keep();
});
player.goTo(kept.time ?? 0);
player.speed = kept.speed ?? 1;
const parts = new Parts({ go: (thing) => go(thing), point: (thing) => point(thing, true) });

const zoomOut = button('Zoom out', () => viewport.zoomOut(), { picture: icon('M3 8h10'), title: 'Zoom out (−)' });
const zoomIn = button('Zoom in', () => viewport.zoomIn(), { picture: icon('M3 8h10M8 3v10'), title: 'Zoom in (+)' });
const fit = button('Fit', () => viewport.fit(), { title: 'Fit the drawing into its window (0)' });
const tableButton = button('As a table', () => setTable(!asTable), { title: 'Show the facts of this drawing as a table' });
const partsButton = button('Parts', () => setParts(!partsHidden), { title: 'Show the list of parts' });
const saves = (['svg', 'png'] as const).map((format: ExportFormat) =>
  button(`Save ${format.toUpperCase()}`, () => chosen !== undefined && send({ type: 'export', drawing: chosen, format }), {
    title: `Save this drawing as ${format.toUpperCase()}`,
  }),
);
const tools = make(
  'div',
  { class: 'tools', role: 'group', 'aria-label': 'Drawing tools' },
  zoomOut,
  zoomIn,
  fit,
  tableButton,
  partsButton,
  make('div', { class: 'saves' }, ...saves),
);
const panel = make(
  'div',
  { class: 'panel', role: 'tabpanel', id: 'panel', hidden: true },
  tools,
  description,
  make(
    'div',
    { class: 'stage' },
    make('div', { class: 'picture' }, lacks, frameOfDrawing, tableBox, caption, player.element),
    parts.element,
  ),
);

const frame = make(
  'main',
  { class: 'frame' },
  make('header', { class: 'head' }, make('div', { class: 'names' }, title, verdictButton), stay),
  trouble,
  tabs,
  waiting,
  panel,
  announced,
);
document.querySelector('#page')?.append(frame);

/** The drawings' own style. Made by hand and not as an element: the page's policy lets no style in that is not the extension's. */
const style = new CSSStyleSheet();
document.adoptedStyleSheets = [style];
let styled = '';

verdictButton.addEventListener('click', () => send({ type: 'problems' }));

// What the pointer does on the drawing.
frameOfDrawing.addEventListener('pointermove', (event) => point(drawing?.thingAt(event.clientX, event.clientY), false));
frameOfDrawing.addEventListener('pointerleave', () => point(undefined, false));
frameOfDrawing.addEventListener('click', (event) => {
  if (viewport.wasDragged) return;
  const thing = drawing?.thingAt(event.clientX, event.clientY);
  if (thing !== undefined) go(thing);
});
document.addEventListener('keydown', (event) => event.key === 'Escape' && point(undefined, false));

function go(thing: string): void {
  select(thing);
  send({ type: 'go', thing });
}

function point(thing: string | undefined, reveal: boolean): void {
  frameOfDrawing.classList.toggle('on-thing', thing !== undefined);
  if (pointed === thing) return;
  pointed = thing;
  drawing?.mark('pointed', thing);
  if (reveal) bringIntoView(thing);
  showCaption();
}

function select(thing: string | undefined): void {
  selected = thing;
  drawing?.mark('selected', thing);
  parts.select(thing);
  showCaption();
}

function bringIntoView(thing: string | undefined): void {
  const place = thing === undefined ? undefined : drawing?.placeOf(thing);
  if (place !== undefined) viewport.reveal(place);
}

/** The innermost thing at the cursor that this drawing shows. */
const atCursor = (): string | undefined => cursor.find((id) => drawing?.things.has(id) === true);

function followCursor(): void {
  const thing = atCursor();
  if (thing === selected) return;
  select(thing);
  bringIntoView(thing);
}

function showCaption(): void {
  const words = (id: string | undefined): string | undefined => {
    const thing = answer?.things.find((one) => one.id === id);
    return thing === undefined ? undefined : thingText(thing.label, thing.range.start.line);
  };
  const here = words(selected);
  say(caption, words(pointed) ?? (here === undefined ? 'Click a part to go to its line.' : `At the cursor: ${here}`));
}

function showZoom(): void {
  const { zoom } = viewport.current;
  // Not `disabled`: a button that loses the focus while it is pressed is lost to the keyboard.
  zoomOut.setAttribute('aria-disabled', String(zoom <= 1));
  fit.setAttribute('aria-disabled', String(zoom <= 1));
}

// The tabs.
function showTabs(drawings: readonly DrawingAnswer[]): void {
  if (chosen === undefined || !drawings.some((one) => one.id === chosen)) chosen = drawings[0]?.id;
  const now = JSON.stringify(drawings.map(({ id, title: name }) => [id, name]));
  if (tabs.dataset['shown'] !== now) {
    tabs.dataset['shown'] = now;
    tabs.replaceChildren(
      ...drawings.map(({ id, title: name }, index) => {
        const tab = make(
          'button',
          { type: 'button', role: 'tab', id: `tab-${index}`, 'data-drawing': id, 'aria-controls': 'panel', title: name },
          tabText({ id, title: name }),
        );
        tab.addEventListener('click', () => choose(id));
        return tab;
      }),
    );
  }
  for (const tab of tabs.querySelectorAll<HTMLButtonElement>('[role=tab]')) {
    const here = tab.dataset['drawing'] === chosen;
    tab.setAttribute('aria-selected', String(here));
    tab.tabIndex = here ? 0 : -1;
    if (here) panel.setAttribute('aria-labelledby', tab.id);
  }
}

tabs.addEventListener('keydown', (event) => {
  const all = [...tabs.querySelectorAll<HTMLButtonElement>('[role=tab]')];
  const at = all.findIndex((tab) => tab.dataset['drawing'] === chosen);
  const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: all.length - 1 }[event.key];
  const tab = to === undefined ? undefined : all[(to + all.length) % all.length];
  if (tab === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  choose(tab.dataset['drawing'] ?? '');
  tab.focus();
});

function choose(id: string): void {
  if (answer === undefined || id === chosen) return;
  chosen = id;
  showTabs(answer.drawings);
  showDrawing();
  keep();
}

function showDrawing(): void {
  const shown = answer?.drawings.find((one) => one.id === chosen);
  if (answer === undefined || shown === undefined) return;
  const text = `${shown.id}\n${shown.svg}`;
  if (text !== drawn) {
    drawn = text;
    const svg = shown.svg === '' ? undefined : importDrawing(shown.svg);
    drawing = svg === undefined ? undefined : new Drawing(svg);
    if (svg === undefined || drawing === undefined) viewport.clear();
    else {
      frameOfDrawing.hidden = asTable;
      svg.setAttribute('role', 'img');
      viewport.show(svg, drawing.size, views.get(shown.id));
      drawing.mark('pointed', pointed);
    }
  }
  drawing?.svg.setAttribute('aria-label', shown.title);
  say(description, shown.description);
  say(lacks, shown.lacks ?? (drawing === undefined ? 'There is nothing to draw yet.' : ''));
  tableBox.replaceChildren(...(asTable ? [tableOf(shown.table)] : []));
  parts.show(inFileOrder(answer.things, drawing?.things ?? new Set()), shown.title);
  player.show(drawing?.moves === true ? answer.cycle : undefined);
  arrange();
  select(atCursor() ?? (selected !== undefined && drawing?.things.has(selected) === true ? selected : undefined));
}

/** Which pieces of the page are there. */
function arrange(): void {
  const picture = drawing !== undefined && !asTable;
  frameOfDrawing.hidden = !picture;
  caption.hidden = !picture;
  parts.element.hidden = !picture || partsHidden;
  player.element.hidden = !picture || drawing?.moves !== true || answer?.cycle === undefined;
  lacks.hidden = drawing !== undefined || asTable;
  tableBox.hidden = !asTable;
  for (const tool of [zoomOut, zoomIn, fit, partsButton]) tool.hidden = !picture;
  for (const save of saves) save.hidden = drawing === undefined;
  if (player.element.hidden) player.pause();
  tableButton.setAttribute('aria-pressed', String(asTable));
  partsButton.setAttribute('aria-expanded', String(!partsHidden));
  partsButton.setAttribute('aria-controls', 'parts');
  stay.setAttribute('aria-pressed', String(stays));
  showZoom();
  drawing?.drawMarks();
}

function setTable(on: boolean): void {
  asTable = on;
  showDrawing();
  keep();
}
function setParts(hidden: boolean): void {
  partsHidden = hidden;
  arrange();
  keep();
}
function setStays(on: boolean): void {
  stays = on;
  arrange();
  keep();
  send({ type: 'stay', stays });
}

// What the extension says.
let restTimer: ReturnType<typeof setTimeout> | undefined;
let spoken: PreviewAnswer | undefined;

function showAnswer(given: PreviewAnswer): void {
  answer = given;
  trouble.hidden = true;
  waiting.hidden = true;
  tabs.hidden = false;
  panel.hidden = false;
  say(title, given.title);
  document.title = `${given.title} – Preview`;
  verdictButton.hidden = false;
  verdictButton.dataset['kind'] = verdictKind(given.counts);
  say(verdictButton, verdict(given.counts));
  if (styled !== given.style) {
    styled = given.style;
    style.replaceSync(styled);
  }
  showTabs(given.drawings);
  showDrawing();
  clearTimeout(restTimer);
  restTimer = setTimeout(() => {
    const words = announcement(spoken, given);
    spoken = given;
    if (words !== undefined) {
      // The same words twice are read out twice only when they come anew.
      announced.textContent = '';
      announced.textContent = words;
    }
  }, restBeforeWords);
}

function showFile(file: Extract<ToPage, { type: 'file' }>): void {
  if (file.uri !== uri) {
    views.clear();
    player.pause();
    player.goTo(0);
    cursor = [];
    spoken = undefined;
  }
  uri = file.uri;
  stays = file.stays;
  if (answer === undefined) say(title, file.name);
  arrange();
  keep();
}

window.addEventListener('message', (event: MessageEvent<ToPage>) => {
  const message = event.data;
  switch (message.type) {
    case 'file':
      return showFile(message);
    case 'answer':
      return message.uri === uri ? showAnswer(message.answer) : undefined;
    case 'cursor':
      cursor = message.things;
      return followCursor();
    case 'trouble':
      waiting.hidden = true;
      trouble.hidden = false;
      return say(trouble, message.message);
    case 'rasterise':
      void rasterise(message.svg, message.width, message.height, message.scale).then((png) =>
        send({ type: 'rasterised', number: message.number, ...(png === undefined ? {} : { png }) }),
      );
  }
});

let keepTimer: ReturnType<typeof setTimeout> | undefined;
/** Notes what a page that is loaded anew should show. */
function keep(): void {
  clearTimeout(keepTimer);
  keepTimer = setTimeout(() => {
    editor.setState({
      ...(uri === undefined ? {} : { uri }),
      stays,
      ...(chosen === undefined ? {} : { drawing: chosen }),
      asTable,
      partsHidden,
      time: player.at,
      speed: player.speed,
      views: Object.fromEntries(views),
    });
  }, 200);
}

arrange();
send({ type: 'ready' });

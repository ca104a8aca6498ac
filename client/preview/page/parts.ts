// Everything in a drawing that stands in the file, as a list: the drawing for the keyboard and for screen readers.
import type { ThingAnswer } from '../../../server/lsp/requests.ts';
import { thingText } from '../words.ts';
import { make } from './elements.ts';

export interface PartsEvents {
  readonly go: (thing: string) => void;
  readonly point: (thing: string | undefined) => void;
}

export class Parts {
  readonly element: HTMLElement;
  private readonly events: PartsEvents;
  private options: { readonly thing: string; readonly item: HTMLElement }[] = [];
  private written = '';

  constructor(events: PartsEvents) {
    this.events = events;
    this.element = make('ul', { class: 'parts', id: 'parts', role: 'listbox', 'aria-label': 'Parts' });
    const thingOf = (event: Event): string | undefined => (event.target as Element).closest<HTMLElement>('[role=option]')?.dataset['thing'];
    this.element.addEventListener('click', (event) => {
      const thing = thingOf(event);
      if (thing !== undefined) events.go(thing);
    });
    this.element.addEventListener('pointerover', (event) => events.point(thingOf(event)));
    this.element.addEventListener('pointerleave', () => events.point(undefined));
    this.element.addEventListener('focusin', (event) => events.point(thingOf(event)));
    this.element.addEventListener('focusout', () => events.point(undefined));
    this.element.addEventListener('keydown', (event) => this.key(event));
  }

  show(things: readonly ThingAnswer[], drawing: string): void {
    this.element.setAttribute('aria-label', `Parts of the drawing ${drawing}`);
    // Rebuilt only when it says something else: the focus and the place in the list stay.
    const written = JSON.stringify(things.map(({ id, label, range }) => [id, label, range.start.line]));
    if (written === this.written) return;
    this.written = written;
    const focused = this.options.find(({ item }) => item === document.activeElement)?.thing;
    this.options = things.map(({ id, label, range }) => ({
      thing: id,
      item: make(
        'li',
        { role: 'option', 'data-thing': id, tabindex: -1, 'aria-selected': 'false', dir: 'auto' },
        thingText(label, range.start.line),
      ),
    }));
    this.element.replaceChildren(...this.options.map(({ item }) => item));
    this.reach(this.options.find(({ thing }) => thing === focused) ?? this.options[0], focused !== undefined);
  }

  select(thing: string | undefined): void {
    for (const option of this.options) {
      const selected = option.thing === thing;
      option.item.setAttribute('aria-selected', String(selected));
      if (!selected) continue;
      if (!this.element.contains(document.activeElement)) this.reach(option, false);
      const [list, item] = [this.element.getBoundingClientRect(), option.item.getBoundingClientRect()];
      // By hand: `scrollIntoView` would move the page too.
      if (item.top < list.top) this.element.scrollTop -= list.top - item.top;
      else if (item.bottom > list.bottom) this.element.scrollTop += item.bottom - list.bottom;
    }
  }

  /** The one option that Tab leads to. */
  private reach(option: { readonly item: HTMLElement } | undefined, focus: boolean): void {
    for (const { item } of this.options) item.tabIndex = item === option?.item ? 0 : -1;
    if (focus) option?.item.focus();
  }

  private key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const at = this.options.findIndex(({ item }) => item === document.activeElement);
    const here = this.options[at];
    if (here === undefined) return;
    const last = this.options.length - 1;
    const steps: Readonly<Record<string, number>> = {
      ArrowDown: at + 1,
      ArrowRight: at + 1,
      ArrowUp: at - 1,
      ArrowLeft: at - 1,
      Home: 0,
      End: last,
      PageDown: at + 10,
      PageUp: at - 10,
    };
    const to = steps[event.key];
    if (event.key === 'Enter' || event.key === ' ') this.events.go(here.thing);
    else if (to !== undefined) this.reach(this.options[Math.min(Math.max(to, 0), last)], true);
    else if (event.key.length === 1) this.typed(event.key, at);
    else return;
    event.preventDefault();
  }

  /** The next one that begins with a letter. */
  private typed(letter: string, at: number): void {
    const rest = [...this.options.slice(at + 1), ...this.options.slice(0, at + 1)];
    const found = rest.find(({ item }) => item.textContent.toLowerCase().startsWith(letter.toLowerCase()));
    if (found !== undefined) this.reach(found, true);
  }
}

// The window onto a drawing: how large it is drawn and which part is seen. It scrolls as everything scrolls, so that wheel,
// touch, keys and the reader's own tools work as they always do.
import type { View } from '../messages.ts';

const most = 16;
const step = 1.25;
/** A press that moves less than this many pixels is a click. */
const still = 4;

export interface Size {
  readonly width: number;
  readonly height: number;
}

export class Viewport {
  readonly element: HTMLElement;
  private readonly changed: () => void;
  private shown: { readonly svg: SVGSVGElement; readonly size: Size } | undefined;
  private view: View = { zoom: 1, x: 0.5, y: 0.5 };
  private dragged = false;
  /** How large the window was when the drawing was put into it. */
  private room = '';

  constructor(element: HTMLElement, changed: () => void) {
    this.element = element;
    this.changed = changed;
    new ResizeObserver(() => this.apply(this.view)).observe(element);
    element.addEventListener('scroll', () => this.remember(), { passive: true });
    element.addEventListener(
      'wheel',
      (event) => {
        if (!event.ctrlKey && !event.metaKey) return;
        event.preventDefault();
        this.zoomBy(Math.exp(-event.deltaY * (event.deltaMode === 0 ? 0.004 : 0.1)), event.clientX, event.clientY);
      },
      { passive: false },
    );
    element.addEventListener('keydown', (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.key === '+' || event.key === '=') this.zoomIn();
      else if (event.key === '-') this.zoomOut();
      else if (event.key === '0') this.fit();
      else return;
      event.preventDefault();
    });
    this.drag();
  }

  get current(): View {
    return this.view;
  }

  /** True right after a press that moved the drawing. */
  get wasDragged(): boolean {
    return this.dragged;
  }

  show(svg: SVGSVGElement, size: Size, view: View | undefined): void {
    const before = this.shown;
    this.shown = { svg, size };
    if (before !== undefined && view === this.view && before.size.width === size.width && before.size.height === size.height) {
      // As large as it was: it lies where it lay, to the pixel.
      svg.style.width = before.svg.style.width;
      svg.style.height = before.svg.style.height;
      this.element.replaceChildren(svg);
      this.changed();
      return;
    }
    this.element.style.aspectRatio = `${size.width} / ${size.height}`;
    this.element.replaceChildren(svg);
    this.apply(view ?? { zoom: 1, x: 0.5, y: 0.5 });
  }

  clear(): void {
    this.shown = undefined;
    this.element.replaceChildren();
  }

  zoomIn(): void {
    this.zoomBy(step);
  }
  zoomOut(): void {
    this.zoomBy(1 / step);
  }
  fit(): void {
    this.apply({ zoom: 1, x: 0.5, y: 0.5 });
  }

  /** Brings a place of the screen into view, if it is not. */
  reveal(place: DOMRect): void {
    const window = this.element.getBoundingClientRect();
    const [x, y] = [place.left + place.width / 2, place.top + place.height / 2];
    const seen = place.left >= window.left && place.right <= window.right && place.top >= window.top && place.bottom <= window.bottom;
    if (!seen) this.element.scrollBy({ left: x - (window.left + window.width / 2), top: y - (window.top + window.height / 2) });
  }

  private zoomBy(factor: number, atX?: number, atY?: number): void {
    if (this.shown === undefined) return;
    const window = this.element.getBoundingClientRect();
    const [x, y] = [atX ?? window.left + window.width / 2, atY ?? window.top + window.height / 2];
    const before = this.shown.svg.getBoundingClientRect();
    const zoom = Math.min(Math.max(this.view.zoom * factor, 1), most);
    if (before.width === 0 || before.height === 0 || zoom === this.view.zoom) return;
    // What lies under the pointer stays there.
    const [shareX, shareY] = [(x - before.left) / before.width, (y - before.top) / before.height];
    this.draw(zoom);
    const after = this.shown.svg.getBoundingClientRect();
    this.element.scrollBy({ left: after.left + shareX * after.width - x, top: after.top + shareY * after.height - y, behavior: 'instant' });
    this.view = { ...this.view, zoom };
    this.room = this.roomNow();
    this.remember();
  }

  private apply(view: View): void {
    this.view = view;
    this.room = this.roomNow();
    if (this.shown === undefined) return;
    this.draw(view.zoom);
    const window = this.element.getBoundingClientRect();
    const drawn = this.shown.svg.getBoundingClientRect();
    if (view.zoom > 1)
      this.element.scrollBy({
        left: drawn.left + view.x * drawn.width - (window.left + window.width / 2),
        top: drawn.top + view.y * drawn.height - (window.top + window.height / 2),
        behavior: 'instant',
      });
    this.changed();
  }

  private draw(zoom: number): void {
    if (this.shown === undefined) return;
    const { svg, size } = this.shown;
    const window = this.element.getBoundingClientRect();
    const scale = Math.min((window.width - 2) / size.width, (window.height - 2) / size.height);
    if (!(scale > 0)) return;
    this.element.classList.toggle('zoomed', zoom > 1);
    svg.style.width = `${Math.floor(size.width * scale * zoom)}px`;
    svg.style.height = `${Math.floor(size.height * scale * zoom)}px`;
  }

  private roomNow(): string {
    return `${this.element.clientWidth} ${this.element.clientHeight}`;
  }

  private remember(): void {
    // A window that has become smaller or larger has moved nothing: what was seen is put right in a moment.
    if (this.shown === undefined || this.room !== this.roomNow()) return;
    const window = this.element.getBoundingClientRect();
    const drawn = this.shown.svg.getBoundingClientRect();
    if (drawn.width === 0 || drawn.height === 0) return;
    const share = (value: number): number => Math.min(Math.max(value, 0), 1);
    this.view = {
      zoom: this.view.zoom,
      x: share((window.left + window.width / 2 - drawn.left) / drawn.width),
      y: share((window.top + window.height / 2 - drawn.top) / drawn.height),
    };
    this.changed();
  }

  /** With a mouse or a pen; fingers scroll by themselves. */
  private drag(): void {
    let from: { readonly x: number; readonly y: number; readonly left: number; readonly top: number; readonly pointer: number } | undefined;
    const { element } = this;
    element.addEventListener('pointerdown', (event) => {
      this.dragged = false;
      if (event.button !== 0 || event.pointerType === 'touch') return;
      from = { x: event.clientX, y: event.clientY, left: element.scrollLeft, top: element.scrollTop, pointer: event.pointerId };
    });
    element.addEventListener('pointermove', (event) => {
      if (from === undefined || event.pointerId !== from.pointer) return;
      const [dx, dy] = [event.clientX - from.x, event.clientY - from.y];
      if (!this.dragged && Math.hypot(dx, dy) < still) return;
      if (!this.dragged) element.setPointerCapture(from.pointer);
      this.dragged = true;
      element.scrollLeft = from.left - dx;
      element.scrollTop = from.top - dy;
    });
    const end = (): void => void (from = undefined);
    element.addEventListener('pointerup', end);
    element.addEventListener('pointercancel', end);
  }
}

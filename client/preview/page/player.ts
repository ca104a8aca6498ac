// The time slider: the cycle at any moment, and played.
import type { CycleAnswer } from '../../../server/lsp/requests.ts';
import { momentText, nextStill, phasesAt, within } from '../cycle.ts';
import { button, icon, make, say } from './elements.ts';

const speeds = [0.5, 1, 2, 5, 10];
/** How long a still picture stays where motion is not wanted, in milliseconds. */
const stillFor = 1500;

export class Player {
  readonly element: HTMLElement;
  private readonly slider: HTMLInputElement;
  private readonly words: HTMLElement;
  private readonly play: HTMLButtonElement;
  private readonly choice: HTMLSelectElement;
  private readonly moved: (time: number) => void;
  private cycle: CycleAnswer | undefined;
  private time = 0;
  private frame: number | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private spoken = '';

  constructor(moved: (time: number) => void) {
    this.moved = moved;
    this.play = button('Play', () => (this.playing ? this.pause() : this.start()));
    this.play.classList.add('play');
    this.slider = make('input', { type: 'range', min: 0, max: 1, step: 0.1, value: 0, id: 'time', 'aria-label': 'Time in the cycle' });
    this.slider.addEventListener('input', () => {
      this.pause();
      this.goTo(Number(this.slider.value));
    });
    this.choice = make(
      'select',
      { 'aria-label': 'Speed', title: 'Speed' },
      ...speeds.map((speed) => make('option', { value: speed }, `${speed}×`)),
    );
    this.choice.addEventListener('change', () => this.moved(this.time));
    this.words = make('p', { class: 'moment', dir: 'auto' });
    this.element = make(
      'div',
      { class: 'player', role: 'group', 'aria-label': 'The cycle' },
      this.play,
      this.slider,
      this.choice,
      this.words,
    );
    this.speed = 1;
    this.showPlay();
  }

  get at(): number {
    return this.time;
  }
  get speed(): number {
    return Number(this.choice.value);
  }
  set speed(speed: number) {
    this.choice.value = String(speeds.includes(speed) ? speed : 1);
  }
  get playing(): boolean {
    return this.frame !== undefined || this.timer !== undefined;
  }

  /** A cycle, at the time that was shown before, as far as it reaches. */
  show(cycle: CycleAnswer | undefined): void {
    this.cycle = cycle;
    if (cycle === undefined) {
      this.pause();
      return;
    }
    // Whole steps, so that the end can be reached.
    this.slider.max = String(Math.ceil(cycle.duration * 10) / 10);
    this.goTo(this.time);
  }

  goTo(time: number): void {
    this.time = time;
    if (this.cycle === undefined) return;
    this.time = within(this.cycle, time);
    this.slider.value = String(this.time);
    const text = momentText(this.cycle, this.time);
    say(this.words, text);
    // While it plays, only a new stretch is worth a word: nobody can listen to tenths of seconds.
    const stretch = phasesAt(this.cycle, this.time).join();
    if (!this.playing || stretch !== this.spoken) this.slider.setAttribute('aria-valuetext', text);
    this.spoken = stretch;
    this.moved(this.time);
  }

  pause(): void {
    if (this.frame !== undefined) cancelAnimationFrame(this.frame);
    clearTimeout(this.timer);
    this.frame = undefined;
    this.timer = undefined;
    this.showPlay();
    if (this.cycle !== undefined) this.slider.setAttribute('aria-valuetext', momentText(this.cycle, this.time));
  }

  private start(): void {
    const { cycle } = this;
    if (cycle === undefined) return;
    if (this.time >= cycle.duration) this.goTo(0);
    if (wantsStillness()) this.stills();
    else this.run();
    this.showPlay();
  }

  private run(): void {
    let last: number | undefined;
    const tick = (now: number): void => {
      const { cycle } = this;
      if (cycle === undefined) return;
      // A page that was hidden goes on where it stopped.
      const passed = Math.min(now - (last ?? now), 100) / 1000;
      last = now;
      this.frame = requestAnimationFrame(tick);
      this.goTo(this.time + passed * this.speed);
      if (this.time >= cycle.duration) this.pause();
    };
    this.frame = requestAnimationFrame(tick);
  }

  private stills(): void {
    const turn = (): void => {
      const { cycle } = this;
      if (cycle === undefined) return;
      this.timer = setTimeout(turn, stillFor / this.speed);
      this.goTo(nextStill(cycle, this.time));
      if (this.time >= cycle.duration) this.pause();
    };
    this.timer = setTimeout(turn, stillFor / this.speed);
  }

  private showPlay(): void {
    const text = this.playing ? 'Pause' : 'Play';
    this.play.setAttribute('aria-label', text);
    this.play.title = text;
    this.play.replaceChildren(this.playing ? icon('M4 3h3v10H4zM9 3h3v10H9z', true) : icon('M4 2.5l9 5.5-9 5.5z', true));
  }
}

/** Asked of the system, or of the editor. */
const wantsStillness = (): boolean =>
  matchMedia('(prefers-reduced-motion: reduce)').matches || document.body.classList.contains('vscode-reduce-motion');

// Long work in small steps, for whoever must not work long at a time: what works rests by `yield` wherever it has done a little, and
// whoever drives it decides when to go on, or to leave it for good.

/** Work that gives an `R` in the end; between two steps it does no more than a thing or two of the file. */
export type Steps<R> = Generator<undefined, R>;

/** The end of work in small steps, for whoever can wait. */
export function inOneGo<R>(steps: Generator<unknown, R>): R {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

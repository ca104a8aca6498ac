/** What the runner notes of a test: that it failed with a seed (undefined: it is no random test), or how often it was tried. */
export type Note = { readonly file: string; readonly test: string } & (
  | { readonly seed: number | undefined; readonly said: string }
  | { readonly tries: number }
);

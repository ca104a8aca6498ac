// Places in a text, marked by `|` where they are: `leaf |west`. No word of the language holds that sign.

export interface Marked {
  /** The text without its markers. */
  readonly text: string;
  /** Where the markers stood, in order. */
  readonly offsets: readonly number[];
  /** The first of them. */
  readonly offset: number;
  /** From the first marker to the last one; both are the same where there is one. */
  readonly start: number;
  readonly end: number;
}

/** The places marked in a text; its beginning where nothing is marked. */
export function at(marked: string): Marked {
  const parts = marked.split('|');
  const offsets: number[] = [];
  let offset = 0;
  for (const part of parts.slice(0, -1)) offsets.push((offset += part.length));
  return markedAt(parts.join(''), offsets);
}

/** The same places in a longer text: those of the first stretch of it that reads like the marked one. */
export function within(text: string, marked: string): Marked {
  const stretch = at(marked);
  const from = text.indexOf(stretch.text);
  if (from < 0) throw new Error(`no ${JSON.stringify(stretch.text)} in the text`);
  return markedAt(
    text,
    (stretch.offsets.length === 0 ? [0] : stretch.offsets).map((offset) => from + offset),
  );
}

function markedAt(text: string, offsets: readonly number[]): Marked {
  const start = offsets[0] ?? 0;
  return { text, offsets, offset: start, start, end: offsets.at(-1) ?? start };
}

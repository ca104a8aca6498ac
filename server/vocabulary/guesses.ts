// What the writer may have meant by a word or a unit that is not known here.

import { hasUnusual, looksTheSame } from './confusables.ts';
import { type BlockForm, blockForms, topForms } from './forms.ts';
import { nearest } from './likeness.ts';
import type { BlockSpec, QuantitySlot } from './spec.ts';
import { type Dimension, type Unit, unitNamed, unitsOf } from './units.ts';
import { blocks } from './words/all.ts';
import { topLines } from './words/outside.ts';

/** The unit in which a bare number would make sense here: the most usual one that lands inside the limits. */
export function likelyUnit(slot: QuantitySlot, amount: number): Unit | undefined {
  return unitsOf(slot.dimension).find((unit) => {
    const si = unit.toSi(amount);
    return si >= slot.min && si <= slot.max;
  });
}

/** The unit of a dimension that was probably meant: spelt in other letters, written out, or nearly right. */
export function nearestUnit(found: string, dimension: Dimension): string | undefined {
  const same = unitsOf(dimension);
  const lower = found.toLowerCase();
  const alike = hasUnusual(found) ? same.flatMap(({ name, also }) => [name, ...also]).find((name) => looksTheSame(found, name)) : undefined;
  if (alike !== undefined) return alike;
  const spelt = same.find((unit) => [unit.name, ...unit.also].some((name) => name.toLowerCase() === lower));
  if (spelt !== undefined) return spelt.name;
  const habit = habits[lower];
  if (habit !== undefined && unitNamed(habit)?.dimension === dimension) return habit;
  const writtenOut = same.find((unit) => unit.says === lower || unit.says === lower + 's');
  return (
    writtenOut?.name ??
    nearest(
      found,
      same.flatMap((unit) => (unit.name.length > 2 ? [unit.name] : [])),
    )
  );
}

/** Spellings that people use and that are not units here, with the unit that is meant. */
const habits: Readonly<Record<string, string>> = {
  metre: 'm',
  meter: 'm',
  metres: 'm',
  meters: 'm',
  mtr: 'm',
  '"': 'in',
  inches: 'in',
  feet: 'ft',
  foot: 'ft',
  kgs: 'kg',
  kilo: 'kg',
  secs: 's',
  seconds: 's',
  second: 's',
  mins: 'min',
  minutes: 'min',
  hr: 'h',
  hrs: 'h',
  hours: 'h',
  degree: 'deg',
  degrees: 'deg',
  percent: '%',
  pct: '%',
  kph: 'km/h',
  kmh: 'km/h',
  fps: 'ft/s',
  volt: 'V',
  volts: 'V',
  amp: 'A',
  amps: 'A',
  k: 'kohm',
  r: 'ohm',
  sqmm: 'mm2',
  newton: 'N',
  newtons: 'N',
  nm: 'N·m',
};

/**
 * Most unknown words of one file for which a likely meaning is looked up: a file in ruins is not mended by more, and each costs
 * some microseconds.
 */
const mostGuesses = 200;

interface Guess {
  readonly meant: string | undefined;
  readonly elsewhere: Home;
}

/** Where a word is at home. */
export interface Home {
  /** Words of the blocks that have it. */
  readonly blocks: readonly string[];
  /** It may stand outside all blocks. */
  readonly outside: boolean;
}

const nowhere: Guess = { meant: undefined, elsewhere: { blocks: [], outside: false } };

/** What is guessed of the unknown words of one file, each in its block once. */
export class WordGuesses {
  readonly #known = new Map<string, Guess>();

  /** `block`: the form of the block that the word stands in; none outside all blocks. */
  of(word: string, block: BlockForm | undefined): Guess {
    const key = `${block?.word ?? ''}\n${word}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    if (this.#known.size >= mostGuesses) return nowhere;
    const guess = { meant: formerly(word, block) ?? nearest(word, wordsIn(block)), elsewhere: homeOf(word) };
    this.#known.set(key, guess);
    return guess;
  }
}

/** The words that may stand in a block, or outside all blocks: lines first. */
export const wordsIn = (block: BlockForm | undefined): string[] =>
  block === undefined ? [...topForms.keys(), ...blockForms.keys()] : [...block.lines.keys(), ...block.blocks.keys()];

/** The line of a block that was once called so. */
function formerly(word: string, block: BlockForm | undefined): string | undefined {
  for (const [now, { spec }] of block?.lines ?? topForms) if (spec.formerly?.includes(word) === true) return now;
  return undefined;
}

/** Where a word is at home, for one that stands in the wrong place. */
function homeOf(word: string): Home {
  const homes: string[] = [];
  const look = (name: string, spec: BlockSpec): void => {
    if (Object.hasOwn(spec.lines, word) || Object.hasOwn(spec.blocks, word)) homes.push(name);
    for (const [key, block] of Object.entries(spec.blocks)) look(key, block);
  };
  for (const [name, spec] of Object.entries(blocks)) look(name, spec);
  return { blocks: homes, outside: Object.hasOwn(topLines, word) || Object.hasOwn(blocks, word) };
}

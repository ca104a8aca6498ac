// Arguments to options. Wrong use is said in one line, with what was probably meant.
import { nearest } from '../engine/inside.ts';
import { WrongUse } from './terminal.ts';

export interface OptionSpec {
  /** What stands for the value in the help; none for a switch. */
  readonly value?: string;
  /** The only values that are taken. */
  readonly oneOf?: readonly string[];
  /** It may be given more than once, with another value each time. */
  readonly many?: true;
  readonly help: string;
}
export type Options = Readonly<Record<string, OptionSpec>>;

export interface Arguments {
  readonly paths: readonly string[];
  /** The value of an option; undefined when it was not given. */
  readonly value: (name: string) => string | undefined;
  /** All values of an option that may be given more than once. */
  readonly values: (name: string) => readonly string[];
  readonly has: (name: string) => boolean;
}

/** Reads what stands behind a verb. `--name value` and `--name=value` are the same; `--` ends the options. */
export function readArguments(verb: string, given: readonly string[], options: Options): Arguments {
  const paths: string[] = [];
  const found = new Map<string, string>();
  const all = new Map<string, string[]>();
  for (let i = 0; i < given.length; i++) {
    const word = given[i] as string;
    if (word === '--') {
      paths.push(...given.slice(i + 1));
      break;
    }
    if (word === '-' || !word.startsWith('-')) {
      paths.push(word);
      continue;
    }
    const equals = word.indexOf('=');
    const name = word.slice(0, equals < 0 ? undefined : equals).replace(/^--?/, '');
    const spec = word.startsWith('--') && Object.hasOwn(options, name) ? options[name] : undefined;
    if (spec === undefined) throw unknownOption(verb, word.slice(0, equals < 0 ? undefined : equals), options);
    if (found.has(name) && spec.many !== true) throw new WrongUse(`“--${name}” is given twice.`);
    let value = equals < 0 ? undefined : word.slice(equals + 1);
    if (spec.value === undefined) {
      if (value !== undefined) throw new WrongUse(`“--${name}” takes no value.`);
      found.set(name, '');
      continue;
    }
    if (value === undefined && i + 1 < given.length && !(given[i + 1] as string).startsWith('--')) value = given[++i];
    if (value === undefined || value === '') throw new WrongUse(`“--${name}” needs a value: --${name} ${spec.value}.`);
    if (spec.oneOf !== undefined && !spec.oneOf.includes(value))
      throw new WrongUse(
        `“--${name} ${value}” is not known.${didYouMean(nearest(value, spec.oneOf))} It takes one of ${spec.oneOf.join(', ')}.`,
      );
    found.set(name, value);
    all.set(name, [...(all.get(name) ?? []), value]);
  }
  return { paths, value: (name) => found.get(name), values: (name) => all.get(name) ?? [], has: (name) => found.has(name) };
}

function unknownOption(verb: string, word: string, options: Options): WrongUse {
  const name = nearest(word.replace(/^-+/, ''), Object.keys(options));
  return new WrongUse(
    `“pintle ${verb}” has no option “${word}”.${didYouMean(name === undefined ? undefined : '--' + name)} “pintle help ${verb}” lists its options.`,
  );
}

export const didYouMean = (word: string | undefined): string => (word === undefined ? '' : ` Did you mean “${word}”?`);

/** The day of `--as-of`, or today. */
export function asOfDay(given: string | undefined, today: () => string): string {
  if (given === undefined) return today();
  const date = new Date(given + 'T00:00:00Z');
  if (!/^\d{4}-\d{2}-\d{2}$/.test(given) || Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== given)
    throw new WrongUse(`“--as-of ${given}” is not a date of the calendar; write it as YYYY-MM-DD.`);
  return given;
}

export interface Shard {
  /** From 1. */
  readonly part: number;
  readonly of: number;
}

export function shardOf(given: string | undefined): Shard | undefined {
  if (given === undefined) return undefined;
  const match = /^(\d{1,6})\/(\d{1,6})$/.exec(given);
  const part = Number(match?.[1]);
  const of = Number(match?.[2]);
  if (match === null || part < 1 || part > of)
    throw new WrongUse(`“--shard ${given}” is not a part of a whole; write it as I/N, such as 1/4, with I from 1 to N.`);
  return { part, of };
}

// The way that a figure was worked out, in Markdown.
import { inputsOf, shownHeld, spareInWords } from '../engine/inside.ts';
import type { Figure, Input } from '../figures/index.ts';
import type { Margin } from '../rules/index.ts';
import { type Reader, showSi, threeDigits } from '../vocabulary/index.ts';
import { code, escape } from './markdown.ts';

/** A margin in Markdown: what is held, its limit, what is left of it, and the rule that bounds it. */
export function marginInWords(margin: Margin, reader: Reader): string {
  const { held, value, limit, used, kept, rule } = margin;
  const share = used === undefined || !Number.isFinite(used) ? '' : ` (${threeDigits(used * 100)} % used)`;
  return `${kept ? 'Margin' : '**Limit passed**'}: ${escape(held.name)} ${escape(shownHeld(margin, value, reader))}, at ${held.way} ${escape(shownHeld(margin, limit, reader))}: ${escape(spareInWords(margin, reader))}${escape(share)}. Rule: ${code(rule.name)}`;
}

/**
 * A figure's derivation in Markdown: value, formula, the numbers put in, inputs, margins, source, and what would change it.
 * `subject` is named where the same is told of several.
 */
export function derivation(figure: Figure, reader: Reader, margins: readonly Margin[] = [], subject = ''): string {
  const { kind } = figure;
  const inputs = inputsOf(figure);
  const value = showSi(figure.value, kind.unit, reader);
  const words = figure.words?.();
  const filled = withNumbers(kind.formula, inputs, reader);
  const lines = [
    `**${escape(kind.title)}**${subject === '' ? '' : ` (${escape(subject)})`} = ${words === undefined || words === '' ? escape(value) : words.startsWith(value) ? escape(words) : `${escape(value)} (${escape(words)})`}`,
    code(kind.formula) + (filled === undefined ? '' : `  \n${code(filled)}`),
    inputs
      .map(
        (input) =>
          `- ${escape(input.name)}: ${escape(showSi(input.value, input.unit, reader))}${input.from === undefined ? '' : ` (${escape(input.from)})`}`,
      )
      .join('\n'),
    margins.map((margin) => marginInWords(margin, reader)).join('  \n'),
    `Source: ${escape(kind.source.text)}${kind.source.standing === 'from memory' ? ' (from memory)' : ''}`,
    kind.changedBy === '' ? '' : `Changed by: ${escape(kind.changedBy)}`,
  ];
  return lines.filter((line) => line !== '').join('\n\n');
}

/**
 * A formula with the numbers put in for its inputs; undefined where none of them stands in it. An input is found by its
 * name, or by the symbol that its name begins with: `b, leaf bracket from the hinge`.
 */
export function withNumbers(formula: string, inputs: readonly Input[], reader: Reader): string | undefined {
  const bySymbol = new Map<string, Input>();
  for (const input of inputs)
    for (const symbol of [input.name, (input.name.split(',')[0] as string).trim()])
      if (symbol !== '' && !bySymbol.has(symbol)) bySymbol.set(symbol, input);
  if (bySymbol.size === 0) return undefined;
  const longestFirst = [...bySymbol.keys()]
    .sort((a, b) => b.length - a.length)
    .map((symbol) => symbol.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&'));
  const pattern = new RegExp(`(?<![\\p{L}\\d_])(?:${longestFirst.join('|')})(?![\\p{L}\\d_])`, 'gu');
  let found = false;
  const fill = (clause: string, index: number): string => {
    // What is named on the left of an equals sign is being worked out there; a clause without one is prose, but for the first.
    const equals = clause.indexOf('=');
    if (equals < 0 && index > 0) return clause;
    const right = clause.slice(equals + 1);
    return (
      clause.slice(0, equals + 1) +
      right.replace(pattern, (symbol, offset: number) => {
        const input = bySymbol.get(symbol) as Input;
        found = true;
        // By hand, an angular speed that is multiplied is one in radians.
        const shown =
          input.unit === 'deg/s' ? `${threeDigits((input.value * Math.PI) / 180)} rad/s` : showSi(input.value, input.unit, reader);
        const isTight = /[·/*√]$/.test(right.slice(0, offset)) || /^[·/*²³^]/.test(right.slice(offset + symbol.length));
        return (input.value < 0 || isTight) && !/^\d+$/.test(shown) ? `(${shown})` : shown;
      })
    );
  };
  const filled = formula
    .split(/(?<=[,;] )/)
    .map(fill)
    .join('');
  return found ? filled : undefined;
}

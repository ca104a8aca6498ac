// Cables in words.
import { classOf, insulationOf } from '../../../figures/cables/working.ts';
import type { Cable } from '../../../model/index.ts';
import { type Reader, showSi } from '../../../vocabulary/index.ts';
import { type Things, whole } from '../drawing.ts';
import { short } from '../text.ts';
import type { Line } from './boxes.ts';

export const cableLines = (cables: readonly Cable[], things: Things, reader: Reader): Line[] =>
  cables.map((cable) => {
    const title = `cable ${short(cable.name)}`;
    return {
      words: `cable ${short(cable.name, 30)}: ${cableInWords(cable, reader)}`,
      name: 'quiet',
      thing: { id: things.note(`cable.${cable.name}`, title, whole(cable.at)), title },
    };
  });

export function cableInWords(cable: Cable, reader: Reader): string {
  const { model, facts } = cable;
  const parts: string[] = [];
  const area = model?.facts.area?.value;
  const cores = model?.facts.cores?.value;
  const times = cores === undefined ? '' : `${cores}\u00a0×\u00a0`;
  if (area !== undefined) parts.push(`${times}${Number((area * 1e6).toPrecision(3))}\u00a0mm²`);
  if (facts.length !== undefined) parts.push(showSi(facts.length.value, 'm', reader));
  const { carries } = facts;
  if (carries !== undefined) parts.push(`${showSi(carries.current, 'A', reader)} at ${showSi(carries.voltage, 'V', reader)}`);
  if (facts.breaker !== undefined) parts.push(`breaker ${breakerInWords(facts.breaker)}`);
  const residual = facts['residual-current'];
  if (residual !== undefined) parts.push(`${showSi(residual.value, 'A', reader)} residual current`);
  if (model !== undefined) parts.push(`class ${classOf(cable)}, ${insulationOf(cable)}`);
  return parts.join(', ');
}

/** As it is written: a letter and a rating. */
function breakerInWords({ line }: NonNullable<Cable['facts']['breaker']>): string {
  const words = line.values.map((value) => {
    if (!('text' in value)) return '';
    return value.kind === 'number' && value.unit !== undefined ? `${value.text} ${value.unit.text}` : value.text;
  });
  return short(words.join(' '), 20);
}

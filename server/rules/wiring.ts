// What several rules about wiring ask of terminals, wires and links. No rule of its own.
import type { Statement, WordValue } from '../../grammar/index.ts';
import type { Source } from '../figures/index.ts';
import type { Installation, Link, Panel, Terminal, TerminalRole, TerminalUse, Wire } from '../model/index.ts';
import { blocks } from '../vocabulary/index.ts';
import { lineEndIn, lineEndOf, lineStartOf } from './fixes.ts';
import type { Edit } from './rule.ts';
import { quoted, rounded } from './words.ts';

export const ofTheModel: Source = { text: 'the model, which says what the product can do', standing: 'derived' };

/** True for the inputs that a sensor or a control is wired to. */
export const isInput = (role: TerminalRole): boolean =>
  role === 'safety-input' || role === 'edge-input' || role === 'two-wire-input' || role === 'command-input' || role === 'stop-input';

/** What a terminal is for, in the words of the vocabulary. */
export const roleInWords = (role: TerminalRole): string => blocks['panel-model'].lines.terminal.slots.role.options[role];

/** True where a terminal of that role surely cannot take this wire; false where it can, or where it cannot be told. */
export function isUnfit({ device, part }: Pick<Wire, 'device' | 'part'>, role: TerminalRole): boolean {
  if (role === 'common' || role === 'earth' || device === undefined) return false;
  // A panel may test a sensor by switching its supply.
  if (part === 'supply') return role !== 'supply-out' && role !== 'test-output';
  if (part === 'test') return role !== 'test-output';
  if (device.kind === 'drive') return role !== 'motor';
  if (device.kind === 'control') return role !== 'command-input' && role !== 'stop-input';
  const { model } = device.it;
  const output = model?.facts.output?.value;
  if (output === undefined) return false;
  if (output === 'two-wire') return role !== 'two-wire-input';
  if (output === 'resistive') return role !== 'edge-input';
  // A loop in the ground may also command the gate.
  return role !== 'safety-input' && role !== 'stop-input' && !(role === 'command-input' && model?.facts.kind?.value === 'loop');
}

/** The first end of a wire that surely cannot take it. An input may return to a terminal of any role. */
export function unfitEnd(wire: Wire): TerminalUse | undefined {
  for (const end of wire.ends) if (end.terminal !== undefined && isUnfit(wire, end.terminal.role) && !isReturnIn(wire, end)) return end;
  return undefined;
}

function isReturnIn(wire: Wire, end: TerminalUse): boolean {
  for (const other of wire.ends) if (other !== end && other.terminal?.common?.text === end.at.text) return true;
  return false;
}

/** True when a terminal stands twice among the ends. */
export function repeatsAnEnd(ends: readonly TerminalUse[]): boolean {
  for (const end of ends) for (const other of ends) if (other !== end && other.at.text === end.at.text) return true;
  return false;
}

/** True when a wire or link of the panel could not be read or names a terminal that is not there: it may be the very one that is missed. */
export function wiringUnsure(panel: Panel): boolean {
  if (lost(panel.unread, 'panel', 'wire') || lost(panel.unread, 'panel', 'link')) return true;
  for (const wire of panel.wires) for (const end of wire.ends) if (end.terminal === undefined) return true;
  for (const link of panel.links) for (const end of link.ends) if (end.terminal === undefined) return true;
  return false;
}

/** True when a line that says `word` may stand among those of a block that could not be read. */
export function lost(unread: readonly string[], block: keyof typeof blocks, word: string): boolean {
  for (const one of unread) if (one === word || !Object.hasOwn(blocks[block].lines, one)) return true;
  return false;
}

/** True when a block of that word stands in the file but could not be read as one. */
export function blockLost(installation: Installation, word: keyof typeof blocks): boolean {
  return installation.problems.some(({ kind, detail }) => (kind === 'block-without-body' && detail['word'] === word) || (kind === 'word-unknown' && detail['meant'] === word));
}

/** True when the name is that of an earlier block too, which is reported already. */
export function isRepeatedName({ problems }: Installation, nameAt: WordValue | undefined): boolean {
  return nameAt === undefined || problems.some(({ kind, start }) => kind === 'name-repeated' && start === nameAt.start);
}

/** The signal wire of that panel that ends on an input. */
export function wireOn(panel: Panel, input: Terminal): Wire | undefined {
  for (const wire of panel.wires) if (wire.part === 'signal') for (const end of wire.ends) if (end.terminal === input) return wire;
  return undefined;
}

/** More links than any panel has: beyond them a path is no longer searched for. */
const mostLinks = 100;

/** The input with a device on it that this link joins to its return, by itself or together with other links. */
export function bridgedBy(panel: Panel, link: Link): { readonly end: TerminalUse; readonly wire: Wire } | undefined {
  for (const end of link.ends) {
    const input = end.terminal;
    if (input === undefined || !isInput(input.role)) continue;
    const wire = wireOn(panel, input);
    if (wire !== undefined && reachesReturn(panel, link, input)) return { end, wire };
  }
  return undefined;
}

function reachesReturn(panel: Panel, first: Link, input: Terminal): boolean {
  const links = [first];
  const reached: Terminal[] = [input];
  for (const link of links) {
    for (const { terminal } of link.ends) {
      if (terminal === undefined || reached.includes(terminal)) continue;
      if (terminal.role === 'common' || terminal.name.text === input.common?.text) return true;
      reached.push(terminal);
      if (panel.links.length > mostLinks) continue;
      for (const next of panel.links) if (!links.includes(next) && next.ends.some((end) => end.terminal === terminal)) links.push(next);
    }
  }
  return false;
}

/** The first quantity of a line (or the one behind a keyword), as it was written: “8.2 kohm”. */
export function written(line: Statement, after?: string): string {
  const from = line.values.findIndex((value) => value.kind === 'word' && value.text === after) + 1;
  const number = line.values.slice(from).find((value) => value.kind === 'number');
  if (number === undefined) return '';
  return number.unit === undefined ? number.text : `${number.text} ${number.unit.text}`;
}

/** Ohms for people. */
export const ohmsInWords = (ohms: number): string => (ohms >= 1000 ? `${rounded(ohms / 1000)} kohm` : `${rounded(ohms)} ohm`);

/** “E1, E2 and E3”, each quoted. */
export function quotedList(names: readonly string[], most = 6): string {
  const shown = names.slice(0, most).map(quoted);
  const more = names.length - shown.length;
  const last = more > 0 ? `${more} more` : shown.pop();
  return shown.length === 0 ? `${last}` : `${shown.join(', ')} and ${last}`;
}

/** Writes a line into a block, behind its last line of one of the `like` words or else behind its last line. */
export function addLine(text: string, block: Statement, line: string, like: readonly string[]): Edit {
  const newLine = lineEndIn(text);
  const { body } = block;
  if (body === undefined) return { start: block.end, end: block.end, text: ` {${newLine}  ${line}${newLine}}` };
  const behind = body.items.findLast((item) => like.includes(item.word?.text ?? '')) ?? body.items.at(-1);
  const from = behind?.end ?? body.start + 1;
  const end = lineEndOf(text, from);
  const lineStart = behind === undefined ? 0 : lineStartOf(text, behind.start);
  const before = behind === undefined ? '' : text.slice(lineStart, behind.start);
  const indent = behind !== undefined && before.trim() === '' ? before : '  ';
  // The closing brace, or another line, may stand on the same line: then the new line goes right behind the old one.
  const alone = end < body.end && !body.items.some((item) => item.start >= from && item.start < end);
  const at = alone ? end : from;
  return { start: at, end: at, text: newLine + indent + line + (alone ? '' : newLine) };
}

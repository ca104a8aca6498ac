// What the page says in words.
import type { PreviewAnswer } from '../../server/lsp/requests.ts';

const counted = (count: number, one: string): string => `${count === 0 ? 'no' : count} ${one}${count === 1 ? '' : 's'}`;

/** "2 errors, no warnings, 1 note" */
export function verdict({ error, warning, note }: PreviewAnswer['counts']): string {
  const words = `${counted(error, 'error')}, ${counted(warning, 'warning')}${note === 0 ? '' : `, ${counted(note, 'note')}`}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** How the verdict is marked: never by colour alone. */
export const verdictKind = ({ error, warning }: PreviewAnswer['counts']): 'error' | 'warning' | 'none' =>
  error > 0 ? 'error' : warning > 0 ? 'warning' : 'none';

const short: Readonly<Record<string, string>> = { plan: 'Plan', timing: 'Timing', force: 'Force', wiring: 'Terminals' };

/** What stands on a drawing's tab: one word where there is one, so that all tabs fit into a narrow window. */
export const tabText = ({ id, title }: { readonly id: string; readonly title: string }): string =>
  Object.hasOwn(short, id) ? (short[id] ?? title) : title;

/** "West leaf, line 12"; lines count from 1 for people. */
export const thingText = (label: string, line: number): string => `${label}, line ${line + 1}`;

/** What is read out after an update; undefined when there is nothing new to say. */
export function announcement(before: PreviewAnswer | undefined, now: PreviewAnswer): string | undefined {
  if (before === undefined) return undefined;
  const same = verdict(before.counts) === verdict(now.counts);
  const redrawn = now.drawings.some((drawing) => before.drawings.find((other) => other.id === drawing.id)?.svg !== drawing.svg);
  return same && !redrawn ? undefined : `${redrawn ? 'Drawings updated. ' : ''}${verdict(now.counts)}.`;
}

/** The name that a saved drawing is offered under. */
export function fileNameFor(path: string, drawing: string, format: string): string {
  const name = path.split(/[/\\]/).at(-1) ?? '';
  const stem = name
    .replace(/\.gate$/, '')
    .replace(/[^\p{L}\p{N} ._-]+/gu, '-')
    .replace(/^[ .-]+|[ .-]+$/g, '');
  return `${stem === '' ? 'site' : stem}-${drawing.replace(/[^a-z0-9-]+/gi, '-')}.${format}`;
}

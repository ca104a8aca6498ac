// Drawings for the tests: of the examples, of texts beside the library, and read back by a parser of XML that others wrote.
import { readFileSync } from 'node:fs';
import { DOMParser, type Document, type Element } from '@xmldom/xmldom';
import { type DrawingShown, type Preview, preview } from '../../server/editor/index.ts';
import { type Analysis, Workspace } from '../../server/engine/index.ts';
import { library } from '../editor/bench.ts';
import { examples } from '../grammar/examples.ts';

export const asOf = '2026-11-25';

const files = new Map(examples().map(({ path, text }) => ['/w/' + path, text]));
export const sites: readonly string[] = [...files.keys()].filter((path) => !/\/(library|bases)\//.test(path));

const workspace = new Workspace({ root: '/w', read: (path) => (files.has(path) ? { text: files.get(path) as string } : 'missing') });
/** One of the examples, by the end of its path. */
export function example(name: string): Analysis {
  const path = sites.find((each) => each.endsWith(`/${name}.gate`)) ?? name;
  return workspace.open(path, files.get(path) ?? '', asOf);
}

/** A text that stands beside the library of the examples. */
export function judged(text: string): Analysis {
  return new Workspace({ root: '/site', read: (path) => (library.has(path) ? { text: library.get(path) as string } : 'missing') }).judge(
    '/site/gates/x.gate',
    text,
    asOf,
  );
}

export const drawingOf = (shown: Preview, id: string): DrawingShown => {
  const found = shown.drawings.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no drawing ${id}`);
  return found;
};

/** A strict reading: every complaint of the parser is an error, but that about the sign for a foreign character, which we put there. */
export function parsed(svg: string): Document {
  const onError = (level: string, message: string): void => {
    if (!message.startsWith('Unicode replacement character')) throw new Error(`${level}: ${message}`);
  };
  return new DOMParser({ onError }).parseFromString(svg, 'image/svg+xml');
}

export function all(within: Document | Element): Element[] {
  const list = within.getElementsByTagName('*');
  return Array.from({ length: list.length }, (_, i) => list.item(i) as Element);
}

export const withClass = (within: Document | Element, name: string): Element[] =>
  all(within).filter((each) => (each.getAttribute('class') ?? '').split(' ').includes(name));
export const of = (element: Element, attribute: string): number => Number(element.getAttribute(attribute));
/** The things that an element stands in, from the inside out. */
export function thingOf(element: Element): string | undefined {
  for (let at: Element | null = element; at !== null; at = at.parentNode as Element | null) {
    const thing = typeof at.getAttribute === 'function' ? at.getAttribute('data-thing') : null;
    if (thing !== null && thing !== '') return thing;
  }
  return undefined;
}
/** The points of a path that is made of straight lines. */
export const pointsOf = (element: Element): [number, number][] =>
  [...(element.getAttribute('d') ?? '').matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

export const previewOf = (name: string): Preview => preview(example(name));
export const libraryText = (name: string): string => readFileSync(new URL(`../../examples/library/${name}.gate`, import.meta.url), 'utf8');

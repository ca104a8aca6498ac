// Counts how often the rows of an installation are read: how work grows, without a clock.
import type { Statement, Tree } from '../../grammar/index.ts';
import type { Installation } from '../../server/model/index.ts';

export interface Counter {
  reads: number;
}

/** The same row, which counts every read of an element of it. */
export function counted<T>(row: readonly T[], counter: Counter): readonly T[] {
  return new Proxy(row, {
    get(of, key) {
      // A property that is an index: that is what reading an element is.
      if (typeof key === 'string' && key.charCodeAt(0) >= 48 && key.charCodeAt(0) <= 57) counter.reads++;
      const value: unknown = Reflect.get(of, key);
      return value;
    },
  });
}

const rows = [
  'leaves',
  'drives',
  'sensors',
  'controls',
  'panels',
  'cables',
  'functions',
  'accepts',
  'problems',
  'wires',
  'links',
  'forces',
];
rows.push('parts', 'subsystems', 'selections', 'ends', 'adjusters');

/** From now on every row of an installation, of its parts and of what they state counts its reads. */
export function countReads(installation: Installation, counter: Counter): void {
  const seen = new Set<object>();
  const count = (of: object, deep: number): void => {
    if (seen.has(of)) return;
    seen.add(of);
    for (const [key, value] of Object.entries(of) as [string, unknown][]) {
      if (!Array.isArray(value) || key === 'memo') continue;
      if (deep === 0 || !rows.includes(key)) for (const one of value as unknown[]) if (isPlain(one) && deep < 2) count(one, deep + 1);
      if (rows.includes(key)) {
        for (const one of value as unknown[]) if (isPlain(one)) count(one, 1);
      }
      (of as Record<string, unknown>)[key] = counted(value as unknown[], counter);
    }
    const facts = (of as { facts?: unknown }).facts;
    if (isPlain(facts)) count(facts, 2);
  };
  count(installation, 0);
  for (const panel of installation.panels) if (panel.model !== undefined) count(panel.model, 1);
  for (const entities of Object.values(installation.reading.entities)) for (const entity of entities) count(entity as object, 1);
}

/** The same for the lines of a tree. */
export function countTree(tree: Tree, counter: Counter): void {
  const count = (of: { items: readonly Statement[] }): void => {
    for (const { body } of of.items) if (body !== undefined) count(body as { items: readonly Statement[] });
    of.items = counted(of.items, counter);
  };
  count(tree as { items: readonly Statement[] });
}

const isPlain = (value: unknown): value is object => typeof value === 'object' && value !== null && !Array.isArray(value);

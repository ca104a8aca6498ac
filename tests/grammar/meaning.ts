// What a file says, without where it says it: for holding two texts against each other.
import type { Statement, Tree, Value } from '../../grammar/index.ts';
import type { Entity, Reading } from '../../server/vocabulary/index.ts';

/** A tree without its offsets. */
export function shapeOf(tree: Tree): unknown {
  return tree.items.map(statementShape);
}

function statementShape(statement: Statement): unknown {
  return { word: statement.word?.text, values: statement.values.map(valueShape), body: statement.body?.items.map(statementShape) };
}

function valueShape(value: Value): unknown {
  switch (value.kind) {
    case 'word':
      return value.text;
    case 'number':
      return {
        number: value.text.replace('\u2212', '-'),
        unit: value.unit?.text,
        plusMinus: value.plusMinus && valueShape(value.plusMinus),
        upTo: value.upTo && valueShape(value.upTo),
      };
    case 'text':
      return { text: value.text };
    case 'date':
      return { date: value.text };
    case 'model':
      return { model: value.name.text };
    case 'comma':
      return ',';
  }
}

/** All facts of a reading, without offsets. */
export function factsOf(reading: Reading): unknown {
  return {
    language: reading.language?.version,
    uses: reading.uses.map((use) => use.path),
    accepts: reading.accepts.map(({ fact, within }) => ({ fact: lineFacts(fact), within: within?.word?.text })),
    entities: Object.values(reading.entities).flatMap((entities) => (entities as readonly Entity[]).map(entityFacts)),
  };
}

/** What a block says, without offsets. */
export function entityFacts(entity: Entity): unknown {
  return {
    kind: entity.kind,
    name: entity.name,
    title: entity.title,
    model: entity.model?.text,
    unread: entity.unread,
    facts: Object.fromEntries(
      Object.entries(entity.facts).map(([word, fact]) => [
        word,
        Array.isArray(fact) ? fact.map(lineFacts) : fact === undefined ? undefined : lineFacts(fact),
      ]),
    ),
    blocks: Object.fromEntries(Object.entries(entity.blocks).map(([word, list]) => [word, (list as readonly Entity[]).map(entityFacts)])),
  };
}

function lineFacts(line: object): unknown {
  return Object.fromEntries(Object.entries(line).flatMap(([key, value]) => (key === 'line' ? [] : [[key, plain(value)]])));
}

function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value === 'object' && value !== null && 'kind' in value && value.kind === 'word') return (value as { text?: unknown }).text;
  return value;
}

/** Problems inside a stretch of text, told from its start. */
export function problemsIn(reading: Reading, start: number, end: number): unknown[] {
  return reading.problems
    .filter((problem) => problem.start >= start && problem.start < end)
    .map((problem) => ({ kind: problem.kind, start: problem.start - start, end: problem.end - start, detail: problem.detail }))
    .sort((a, b) => a.start - b.start || a.end - b.end || a.kind.localeCompare(b.kind));
}

/** Every block of a reading, nested ones too, by where it starts. */
export function entitiesOf(reading: Reading): Map<number, Entity> {
  const found = new Map<number, Entity>();
  const add = (entity: Entity): void => {
    found.set(entity.at.start, entity);
    for (const list of Object.values(entity.blocks)) for (const nested of list as readonly Entity[]) add(nested);
  };
  for (const list of Object.values(reading.entities)) for (const entity of list as readonly Entity[]) add(entity);
  return found;
}

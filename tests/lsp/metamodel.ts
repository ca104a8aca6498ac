// The protocol as those who define it have written it down for machines: the metaModel of LSP 3.18. Says of any value whether
// it is of a type there, and makes a client that can take everything.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../kit/sources.ts';

type Type =
  | { readonly kind: 'reference' | 'base'; readonly name: string }
  | { readonly kind: 'array'; readonly element: Type }
  | { readonly kind: 'or' | 'and' | 'tuple'; readonly items: readonly Type[] }
  | { readonly kind: 'map'; readonly key: Type; readonly value: Type }
  | { readonly kind: 'stringLiteral'; readonly value: string }
  | { readonly kind: 'literal'; readonly value: { readonly properties: readonly Property[] } };
interface Property {
  readonly name: string;
  readonly type: Type;
  readonly optional?: boolean;
}
interface Structure {
  readonly name: string;
  readonly properties: readonly Property[];
  readonly extends?: readonly Type[];
  readonly mixins?: readonly Type[];
}
interface Message {
  readonly method: string;
  readonly messageDirection: 'clientToServer' | 'serverToClient' | 'both';
  readonly params?: Type;
  readonly result?: Type;
  readonly partialResult?: Type;
}
interface Enumeration {
  readonly name: string;
  readonly type: Type;
  readonly values: readonly { readonly value: string | number }[];
  readonly supportsCustomValues?: boolean;
}
interface Model {
  readonly requests: readonly Message[];
  readonly notifications: readonly Message[];
  readonly structures: readonly Structure[];
  readonly enumerations: readonly Enumeration[];
  readonly typeAliases: readonly { readonly name: string; readonly type: Type }[];
}

/** Where it lies: beside the project, or in the folder that PINTLE_SCHEMAS names. Not copied here: its licence is another. */
const file = join(process.env['PINTLE_SCHEMAS'] ?? join(root, '../shared/reference/schemas'), 'lsp-3.18.metaModel.json');
export const isThere = existsSync(file);

const model: Model = isThere
  ? (JSON.parse(readFileSync(file, 'utf8')) as Model)
  : { requests: [], notifications: [], structures: [], enumerations: [], typeAliases: [] };
const byName = <T extends { readonly name: string }>(list: readonly T[]): ReadonlyMap<string, T> =>
  new Map(list.map((one) => [one.name, one]));
const structures = byName(model.structures);
const enumerations = byName(model.enumerations);
const aliases = byName(model.typeAliases);
export const requests: ReadonlyMap<string, Message> = new Map(model.requests.map((one) => [one.method, one]));
export const notifications: ReadonlyMap<string, Message> = new Map(model.notifications.map((one) => [one.method, one]));

const known = new Map<string, readonly Property[]>();
function propertiesOf(structure: Structure): readonly Property[] {
  let found = known.get(structure.name);
  if (found === undefined) {
    const inherited = [...(structure.extends ?? []), ...(structure.mixins ?? [])].flatMap(propertiesIn);
    const own = new Set(structure.properties.map(({ name }) => name));
    known.set(structure.name, (found = [...inherited.filter(({ name }) => !own.has(name)), ...structure.properties]));
  }
  return found;
}
function propertiesIn(type: Type): readonly Property[] {
  if (type.kind === 'literal') return type.value.properties;
  if (type.kind === 'and') return type.items.flatMap(propertiesIn);
  const structure = type.kind === 'reference' ? structures.get(type.name) : undefined;
  return structure === undefined ? [] : propertiesOf(structure);
}

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isInteger = (value: unknown): boolean => Number.isInteger(value) && Math.abs(value as number) < 2 ** 31;
const bases: Readonly<Record<string, (value: unknown) => boolean>> = {
  string: (value) => typeof value === 'string',
  boolean: (value) => typeof value === 'boolean',
  null: (value) => value === null,
  integer: isInteger,
  uinteger: (value) => isInteger(value) && (value as number) >= 0,
  decimal: (value) => typeof value === 'number' && Number.isFinite(value),
  URI: (value) => typeof value === 'string' && /^[A-Za-z][A-Za-z0-9+.-]*:/.test(value),
  DocumentUri: (value) => typeof value === 'string' && /^[A-Za-z][A-Za-z0-9+.-]*:/.test(value),
  RegExp: (value) => typeof value === 'string',
};

const shown = (value: unknown): string => JSON.stringify(value)?.slice(0, 80) ?? 'undefined';

function fieldFaults(properties: readonly Property[], value: unknown, path: string): string[] {
  if (!isFields(value)) return [`${path}: ${shown(value)} is no object`];
  const found: string[] = [];
  const left = new Set(Object.keys(value));
  for (const { name, type, optional } of properties) {
    left.delete(name);
    if (value[name] !== undefined) found.push(...faults(type, value[name], `${path}.${name}`));
    else if (optional !== true) found.push(`${path}.${name} is missing`);
  }
  for (const name of left) found.push(`${path}.${name} is no property of the protocol`);
  return found;
}

/** What is wrong with a value that is to be of a type; empty where nothing is. */
export function faults(type: Type, value: unknown, path: string): string[] {
  switch (type.kind) {
    case 'base':
      return bases[type.name]?.(value) === true ? [] : [`${path}: ${shown(value)} is no ${type.name}`];
    case 'stringLiteral':
      return value === type.value ? [] : [`${path}: ${shown(value)} is not “${type.value}”`];
    case 'array':
      return Array.isArray(value)
        ? value.flatMap((one, i) => faults(type.element, one, `${path}[${i}]`))
        : [`${path}: ${shown(value)} is no list`];
    case 'tuple':
      return Array.isArray(value) && value.length === type.items.length
        ? type.items.flatMap((item, i) => faults(item, value[i], `${path}[${i}]`))
        : [`${path}: ${shown(value)} is no list of ${type.items.length}`];
    case 'map':
      return isFields(value)
        ? Object.entries(value).flatMap(([key, one]) => [
            ...faults(type.key, key, `${path} key`),
            ...faults(type.value, one, `${path}.${key}`),
          ])
        : [`${path}: ${shown(value)} is no map`];
    case 'literal':
    case 'and':
      return fieldFaults(propertiesIn(type), value, path);
    case 'or': {
      let fewest: string[] | undefined;
      for (const item of type.items) {
        const found = faults(item, value, path);
        if (found.length === 0) return [];
        if (fewest === undefined || found.length < fewest.length) fewest = found;
      }
      return fewest ?? [];
    }
    case 'reference': {
      if (type.name === 'LSPAny') return value === undefined ? [`${path} is undefined`] : [];
      const structure = structures.get(type.name);
      if (structure !== undefined) return fieldFaults(propertiesOf(structure), value, path);
      const alias = aliases.get(type.name);
      if (alias !== undefined) return faults(alias.type, value, path);
      const enumeration = enumerations.get(type.name);
      if (enumeration === undefined) return [`${path}: the protocol has no ${type.name}`];
      if (enumeration.supportsCustomValues === true) return faults(enumeration.type, value, path);
      return enumeration.values.some((one) => one.value === value) ? [] : [`${path}: ${shown(value)} is no ${type.name}`];
    }
  }
}

/** Lists of texts whose meaning their type does not say, by the end of their path. */
const lists: Readonly<Record<string, readonly string[]>> = {
  properties: ['documentation', 'detail', 'tooltip', 'edit', 'command', 'location.range', 'label.location'],
  tokenTypes: enumerations.get('SemanticTokenTypes')?.values.map(({ value }) => String(value)) ?? [],
  tokenModifiers: enumerations.get('SemanticTokenModifiers')?.values.map(({ value }) => String(value)) ?? [],
};

/** A value of a type with everything in it that there can be. */
function everything(type: Type, name: string, paths: string[], path: string): unknown {
  const fieldsOf = (properties: readonly Property[]): object =>
    Object.fromEntries(
      properties.map((property) => {
        const inner = path === '' ? property.name : `${path}.${property.name}`;
        paths.push(inner);
        return [property.name, everything(property.type, property.name, paths, inner)];
      }),
    );
  switch (type.kind) {
    case 'base':
      return { boolean: true, string: 'x', uinteger: 5000, integer: 1, decimal: 1 }[type.name] ?? null;
    case 'array': {
      const values = type.element.kind === 'reference' ? enumerations.get(type.element.name)?.values.map(({ value }) => value) : undefined;
      // The first is what a client likes best.
      if (values !== undefined) return name.endsWith('Format') ? [...values].reverse() : [...values];
      return lists[name] ?? [];
    }
    case 'or':
      return everything(type.items.at(-1) as Type, name, paths, path);
    case 'literal':
      return fieldsOf(type.value.properties);
    case 'reference': {
      const structure = structures.get(type.name);
      if (structure !== undefined) return fieldsOf(propertiesOf(structure));
      return enumerations.get(type.name)?.values[0]?.value ?? {};
    }
    default:
      return {};
  }
}

/** What a client can say that it takes: everything, and the path of each thing that it can say. */
export function wholeClient(): { readonly capabilities: Readonly<Record<string, unknown>>; readonly paths: readonly string[] } {
  const paths: string[] = [];
  const capabilities = everything({ kind: 'reference', name: 'ClientCapabilities' }, '', paths, '');
  return { capabilities: capabilities as Readonly<Record<string, unknown>>, paths };
}

/** The smallest values of a type: with what is required and nothing else, one for each way in which a value can be built. */
export function least(type: Type): unknown[] {
  const of = (properties: readonly Property[]): unknown[] => {
    let found: Fields[] = [{}];
    for (const { name, type: inner, optional } of properties)
      if (optional !== true) found = least(inner).flatMap((value) => found.map((one) => ({ ...one, [name]: value })));
    return found;
  };
  switch (type.kind) {
    case 'base':
      return [
        { boolean: false, string: '', URI: 'file:///x', DocumentUri: 'file:///x', integer: -1, uinteger: 0, decimal: 0.5, null: null }[
          type.name
        ],
      ];
    case 'array':
      return [[], ...least(type.element).map((one) => [one])];
    case 'tuple':
      return [type.items.map((item) => least(item)[0])];
    case 'map':
      return [{}];
    case 'stringLiteral':
      return [type.value];
    case 'or':
      return type.items.flatMap(least);
    case 'literal':
    case 'and':
      return of(propertiesIn(type));
    case 'reference': {
      if (type.name === 'LSPAny') return [null, 5];
      const structure = structures.get(type.name);
      const alias = aliases.get(type.name);
      if (structure !== undefined) return of(propertiesOf(structure));
      return alias === undefined ? (enumerations.get(type.name)?.values.map(({ value }) => value) ?? []).slice(0, 2) : least(alias.type);
    }
  }
}

type Fields = Readonly<Record<string, unknown>>;

// Renaming: every place of one name, in every file that speaks of it, and nothing else. What comes out is read again before
// it is offered: a name that would then mean something else is refused, and not written.
import { scan, withoutUnseen } from '../../grammar/index.ts';
import { type Analysis, type ReadResult, Workspace, withEdits } from '../engine/index.ts';
import { type Edit, quoted } from '../rules/index.ts';
import { asWritten, hasUnusual, isPrintable, nameSpaceInWords } from '../vocabulary/index.ts';
import { isShared, keyOf, type Meaning, type Mention, mentionAt, mentionsOf } from './names.ts';
import { statementAt } from './places.ts';
import { referencesTo } from './references.ts';

/** A meaning that has a name which its own file gives it. */
export type Renamable = Exclude<Meaning, { readonly kind: 'rule' | 'file' }>;

export interface Renamed {
  readonly start: number;
  readonly end: number;
  readonly name: string;
  readonly meaning: Renamable;
  /** True where other files can speak of it too. */
  readonly shared: boolean;
}

/** Why a name is not changed; a sentence for people. */
export interface Refusal {
  readonly refused: string;
}

export interface FileEdits {
  readonly path: string;
  readonly edits: readonly Edit[];
}

export type Renaming = { readonly files: readonly FileEdits[] } | Refusal;

/** What some meanings are called in a sentence; the others by their own word. */
const otherwise: Readonly<Partial<Record<Renamable['kind'], string>>> = {
  device: nameSpaceInWords('device'),
  function: 'safety function',
  option: 'position',
};
const inWords = (kind: Renamable['kind']): string => otherwise[kind] ?? kind.replace('-', ' ');

/** The name at an offset, if it is one that can be changed. */
export function prepareRename(analysis: Analysis, offset: number): Renamed | Refusal {
  const mention = mentionAt(analysis, offset);
  if (mention === undefined) return { refused: whyNot(analysis, offset) };
  const { meaning, start, end } = mention;
  if (meaning.kind === 'rule')
    return { refused: `${quoted(meaning.name)} is the name of a rule, which Pintle gives it; it is the same in every file.` };
  if (meaning.kind === 'file')
    return { refused: 'A path is changed by renaming or moving the file itself; the “use” lines that lead to it then follow.' };
  return { start, end, name: meaning.name, meaning, shared: isShared(meaning) };
}

function whyNot(analysis: Analysis, offset: number): string {
  const statement = statementAt(analysis.installation.reading.tree, offset)?.statement;
  const word = statement?.word;
  if (word !== undefined && offset >= word.start && offset <= word.end)
    return `${quoted(word.text)} is a word of the language and not a name.`;
  const value = statement?.values.find((one) => offset >= one.start && offset <= one.end);
  if (value?.kind === 'word') return `${quoted(value.text)} is no name of something that this file, or a library that it uses, declares.`;
  return 'Only a name can be changed, and none stands here.';
}

/** Why a text cannot be the name of such a thing; undefined where it can. */
export function nameFault(meaning: Renamable, name: string): string | undefined {
  if (meaning.kind === 'terminal' && isPrintable(name)) return undefined;
  const { tokens, comments, problems } = scan(name);
  const isWord =
    tokens.length === 1 &&
    tokens[0]?.tokenType.name === 'Word' &&
    tokens[0].image === name &&
    comments.length === 0 &&
    problems.length === 0;
  // What stands in a line may be named by any word, as it is printed on the product; what has a block starts with a letter.
  const isFit = isWord && (meaning.kind === 'terminal' || meaning.kind === 'option' || /^\p{L}/u.test(name));
  return isFit ? undefined : `${quoted(name)} is not a name: a name is one word of letters, digits and hyphens, and starts with a letter.`;
}

/** False for a text that surely does not speak of the name; found without reading it. */
export const mayMention = (text: string, name: string): boolean =>
  // A name is read without characters that show nothing, which may stand in the midst of it.
  text.includes(name) || (hasUnusual(text) && withoutUnseen(text).includes(name));

export interface RenameWork {
  readonly target: Renamed;
  readonly newName: string;
  /** The files that may speak of the old name or of the new one, the one that declares it among them. */
  readonly files: readonly Analysis[];
  /** The text of any file of the workspace as it is now. */
  readonly read: (path: string) => ReadResult;
  readonly root: string;
}

/** The edits, or why there are none. It yields after each file, so that whoever runs it can rest; the end is what it returns. */
export function* renaming(work: RenameWork): Generator<undefined, Renaming> {
  const { target, newName, files, read, root } = work;
  const { meaning, name } = target;
  const fault = nameFault(meaning, newName);
  if (fault !== undefined) return { refused: fault };
  if (newName === name) return { files: [] };
  const what = inWords(meaning.kind);
  let declared = 0;
  for (const file of files) {
    for (const mention of mentionsOf(file)) {
      if (!mention.declares) continue;
      if (isSameMeaning(mention.meaning, meaning)) declared++;
      else if (isRival(mention.meaning, meaning, newName))
        return { refused: `${quoted(newName)} is already the name of a ${what} (${placeOf(file, mention.start, root)}).` };
    }
    yield;
  }
  if (declared === 0) return { refused: `The file that declares ${quoted(name)} cannot be read, so it is not renamed anywhere.` };
  if (declared > 1)
    return {
      refused: `${quoted(name)} is declared ${declared} times as a ${what}, so it cannot be told which one is meant. Change one of them by hand first.`,
    };

  const edited = new Map<string, { readonly before: Analysis; readonly edits: readonly Edit[]; readonly text: string }>();
  for (const file of files) {
    const edits = referencesTo(file, meaning).map(({ start, end }) => ({
      start,
      end,
      text: meaning.kind === 'terminal' ? asWritten(newName) : newName,
    }));
    if (edits.length > 0) edited.set(file.path, { before: file, edits, text: withEdits(file.text, edits) });
  }
  // Read again as it would be: nothing else may have changed its meaning, and nothing may be worse.
  const after = new Workspace({
    root,
    read: (path) => {
      const changed = edited.get(path);
      return changed === undefined ? read(path) : { text: changed.text };
    },
  });
  for (const { before, edits, text } of edited.values()) {
    const spoilt = firstSpoilt(before, edits, after.named(before.path, text), meaning, newName);
    if (spoilt !== undefined)
      return {
        refused: `${quoted(newName)} cannot be the new name of ${quoted(name)}: ${spoilt.why} (${placeOf(before, spoilt.at, root)}).`,
      };
    yield;
  }
  return { files: [...edited].map(([path, { edits }]) => ({ path, edits })) };
}

/** True for a name of the same kind in the same scope. */
function isRival(other: Meaning, meaning: Renamable, newName: string): boolean {
  if (other.kind !== meaning.kind || !('name' in other) || other.name !== newName) return false;
  if ('model' in other && 'model' in meaning)
    return (
      other.path === meaning.path &&
      other.model === meaning.model &&
      (!('selector' in other) || !('selector' in meaning) || other.selector === meaning.selector)
    );
  return true;
}

/** What a meaning is once the name is changed; names of models and selectors stand in the meaning of what they hold. */
function renamed(meaning: Meaning, target: Renamable, newName: string): Meaning {
  if (isSameMeaning(meaning, target)) return { ...meaning, name: newName } as Meaning;
  if (!('model' in meaning)) return meaning;
  if (target.kind === 'panel-model' && meaning.model === target.name && meaning.path === target.path) return { ...meaning, model: newName };
  if (
    target.kind === 'selector' &&
    meaning.kind === 'option' &&
    meaning.selector === target.name &&
    meaning.model === target.model &&
    meaning.path === target.path
  )
    return { ...meaning, selector: newName };
  return meaning;
}

/** The first thing that would not be as it was but for the name, at its place before; undefined where all is well. */
function firstSpoilt(
  before: Analysis,
  edits: readonly Edit[],
  after: Analysis,
  target: Renamable,
  newName: string,
): { readonly at: number; readonly why: string } | undefined {
  const now = mentionsOf(after);
  const was = mentionsOf(before);
  for (let i = 0; i < Math.max(now.length, was.length); i++) {
    const [old, fresh] = [was[i], now[i]];
    const isSame =
      old !== undefined &&
      fresh !== undefined &&
      moved(old.start, edits) === fresh.start &&
      isSameMeaning(renamed(old.meaning, target, newName), fresh.meaning);
    if (isSame) continue;
    const isNew = fresh !== undefined && (old === undefined || fresh.start < moved(old.start, edits));
    return {
      at: isNew ? back(fresh.start, edits) : ((old as Mention | undefined)?.start ?? 0),
      why: isNew ? 'a line speaks of it already, and would then mean this one' : 'a line would then mean something else',
    };
  }
  const counts = new Map<string, number>();
  for (const { kind } of before.installation.problems) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  for (const { kind, start } of after.installation.problems) {
    const left = (counts.get(kind) ?? 0) - 1;
    if (left < 0) return { at: back(start, edits), why: 'a line could then no longer be read as it is meant' };
    counts.set(kind, left);
  }
  return undefined;
}

const isSameMeaning = (one: Meaning, other: Meaning): boolean => one.kind === other.kind && keyOf(one) === keyOf(other);

/** Where an offset is after edits that are in order, and where one after them was before. */
function moved(offset: number, edits: readonly Edit[]): number {
  let shift = 0;
  for (const edit of edits) if (edit.end <= offset) shift += edit.text.length - (edit.end - edit.start);
  return offset + shift;
}
function back(offset: number, edits: readonly Edit[]): number {
  let at = offset;
  for (const edit of edits) {
    if (edit.start >= at) break;
    const grown = edit.text.length - (edit.end - edit.start);
    at = Math.max(edit.start, at - grown);
  }
  return at;
}

function placeOf(file: Analysis, offset: number, root: string): string {
  const line = file.text.slice(0, offset).split(/\r\n|\r|\n/).length;
  return `${file.path.startsWith(root + '/') ? file.path.slice(root.length + 1) : file.path}, line ${line}`;
}

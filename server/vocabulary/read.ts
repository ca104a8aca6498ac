// From the tree to facts, by the words alone. What cannot be read is reported and left out; the rest stands.
import { type Statement, type Tree, type WordValue, withoutUnseen } from '../../grammar/index.ts';
import { acceptForm, type BlockForm, blockForms, expectsForm, type LineForm, noBlocks, none, topForms } from './forms.ts';
import { WordGuesses, wordsIn } from './guesses.ts';
import { type Blocks, type BlockWord, languageVersion } from './kinds.ts';
import { type LineAtHand, noLineYet, readLine } from './lines.ts';
import { ProblemList, type ReadingProblem } from './problems.ts';
import { headerShape } from './shapes.ts';
import type { Entity, Line } from './spec.ts';
import { noneRead } from './words/all.ts';
import type { anywhereLines, topLines } from './words/outside.ts';

export type AcceptLine = Line<(typeof anywhereLines)['accept']>;

/** An acceptance and the block it stands in; none when it holds for the whole file. */
export interface Acceptance {
  readonly fact: AcceptLine;
  readonly within: Statement | undefined;
}

export type ExpectLine = Line<(typeof anywhereLines)['expects']>;

/** A promise that a rule finds something, and the block it stands in; none when it is of the whole file. */
export interface Expectation {
  readonly fact: ExpectLine;
  readonly within: Statement | undefined;
}

type LanguageLine = Line<(typeof topLines)['language']>;
type UseLine = Line<(typeof topLines)['use']>;
type ExpectsNoLine = Line<(typeof topLines)['expects-no']>;

/** One file as read: its blocks by their word, nothing yet resolved. */
export interface Reading {
  readonly tree: Tree;
  readonly language: LanguageLine | undefined;
  readonly uses: readonly UseLine[];
  readonly accepts: readonly Acceptance[];
  readonly expects: readonly Expectation[];
  readonly expectsNo: ExpectsNoLine | undefined;
  readonly entities: { readonly [K in BlockWord]: readonly Entity<Blocks[K]>[] };
  readonly problems: readonly ReadingProblem[];
}

/** Everything that a file says, and all that could not be understood of it. Never throws. */
export function readFile(tree: Tree): Reading {
  const reading = new FileReading(tree);
  reading.readTop();
  return reading.finish();
}

class FileReading {
  readonly #tree: Tree;
  readonly #found: ProblemList;
  readonly #hand: LineAtHand;
  readonly #guesses = new WordGuesses();
  #language: LanguageLine | undefined;
  readonly #uses: UseLine[] = [];
  readonly #accepts: Acceptance[] = [];
  #expects: Expectation[] | undefined;
  #expectsNo: ExpectsNoLine | undefined;
  readonly #entities: Record<string, Entity[]> = noneRead();

  constructor(tree: Tree) {
    this.#tree = tree;
    this.#found = new ProblemList(tree.text, tree.problems);
    this.#hand = noLineYet(this.#found);
  }

  readTop(): void {
    for (const statement of this.#tree.items) {
      const word = statement.word;
      if (word === undefined) continue;
      const block = blockForms.get(word.text);
      if (block !== undefined) this.#addBlock(block, statement, this.#entities[block.word] as Entity[]);
      else if (!this.#readAnywhere(word, statement, undefined)) {
        const line = topForms.get(word.text);
        if (line === undefined) this.#unknownWord(word, undefined);
        else this.#topLine(line, statement);
      }
    }
  }

  finish(): Reading {
    this.#checkLanguage();
    return {
      tree: this.#tree,
      language: this.#language,
      uses: this.#uses,
      accepts: this.#accepts,
      expects: this.#expects ?? none,
      expectsNo: this.#expectsNo,
      entities: this.#entities as unknown as Reading['entities'],
      problems: this.#found.problems,
    };
  }

  /** The version line: there, first, and one that is known. */
  #checkLanguage(): void {
    const { items, problems } = this.#tree;
    const first = items[0];
    const language = this.#language;
    if (first === undefined) {
      if (problems.length === 0) this.#found.add('file-empty', { start: 0, end: 0 }, {});
    } else if (language === undefined) {
      if (items.some((item) => item.word?.text === 'language')) return;
      const at = first.word ?? { start: first.start, end: first.start + 1 };
      this.#found.add('language-missing', at, { version: languageVersion, at: first.start });
    } else if (language.version !== languageVersion) {
      const at = language.line.values[0] ?? language.line;
      this.#found.add('language-unknown', at, { found: language.version, version: languageVersion });
    } else if (language.line !== first) this.#found.add('language-not-first', language.line, {});
  }

  #topLine(form: LineForm, statement: Statement): void {
    const line = readLine(this.#hand, form, statement);
    if (line === undefined) return;
    if (form.word === 'use') this.#uses.push({ ...(line as unknown as UseLine), path: this.#rawText(statement) });
    else if (form.word === 'expects-no') {
      if (this.#expectsNo === undefined) this.#expectsNo = line as unknown as ExpectsNoLine;
      else this.#found.addRepeated(form.word, statement, this.#expectsNo.line);
    } else if (this.#language === undefined) this.#language = line as unknown as LanguageLine;
    else this.#found.addRepeated(form.word, statement, this.#language.line);
  }

  /** A path as it was typed: in a path a backslash is a mistake to be told of and not the mark of an escape. */
  #rawText(statement: Statement): string {
    const value = statement.values[0];
    if (value?.kind !== 'text') return '';
    const raw = withoutUnseen(this.#found.source(value));
    return raw.slice(1, raw.length > 1 && raw.endsWith('"') ? -1 : undefined);
  }

  /** Reads a block and puts it to those of its word. */
  #addBlock(form: BlockForm, statement: Statement, list: Entity[]): void {
    if (statement.body === undefined) {
      this.#found.add('block-without-body', statement, { word: form.word });
      return;
    }
    const first = list[0];
    if (form.spec.single === true && first !== undefined)
      this.#found.addRepeated(form.word, statement.word ?? statement, first.at.word ?? first.at);
    list.push(this.#block(form, statement));
  }

  #block(form: BlockForm, statement: Statement): Entity {
    const header = this.#header(form, statement);
    const hand = this.#hand;
    // A row by the places of the lines, and one literal of it at the end: keys that are stored one by one cost far more.
    const row = form.blank.slice();
    const nested: Record<string, Entity[]> = form.blocks.size === 0 ? noBlocks : {};
    for (const word of form.blocks.keys()) nested[word] = [];
    let unread: string[] | undefined;
    for (const item of statement.body?.items ?? []) {
      const word = item.word;
      if (word === undefined) continue;
      const line = form.lines.get(word.text);
      if (line !== undefined) {
        if (!addLine(hand, line, item, row)) (unread ??= []).push(word.text);
        continue;
      }
      const block = form.blocks.get(word.text);
      if (block !== undefined) this.#addBlock(block, item, nested[block.word] as Entity[]);
      else if (!this.#readAnywhere(word, item, statement)) {
        this.#unknownWord(word, form);
        (unread ??= []).push(word.text);
      }
    }
    return {
      kind: form.word,
      name: header.name,
      nameAt: header.nameAt,
      title: header.title,
      model: header.model,
      at: statement,
      facts: form.record(row) as Entity['facts'],
      blocks: nested,
      unread: unread ?? none,
      memo: [],
    };
  }

  #header({ word, spec }: BlockForm, statement: Statement): Pick<Entity, 'name' | 'nameAt' | 'title' | 'model'> {
    let nameAt: WordValue | undefined;
    let title: string | undefined;
    let model: WordValue | undefined;
    for (const value of statement.values) {
      if (value.kind === 'word' && nameAt === undefined && spec.named) nameAt = value;
      else if (value.kind === 'text' && title === undefined && spec.title !== undefined) title = value.text;
      else if (value.kind === 'model' && model === undefined && spec.model !== undefined) model = value.name;
      else this.#found.add('value-unexpected', value, { word, found: this.#found.source(value), shape: headerShape(word, spec) });
    }
    if (spec.named) {
      if (nameAt === undefined) this.#found.add('name-missing', statement.word ?? statement, { word, example: firstLineOf(spec.example) });
      else if (!startsWithLetter(nameAt.text)) this.#found.add('name-unfit', nameAt, { name: nameAt.text });
    }
    return { name: nameAt?.text ?? '', nameAt, title, model };
  }

  /** Reads a line that may stand in any block of a site and outside of all; false where it is none of these. */
  #readAnywhere(word: WordValue, statement: Statement, within: Statement | undefined): boolean {
    if (word.text === 'accept') {
      const fact = readLine(this.#hand, acceptForm, statement);
      if (fact !== undefined) this.#accepts.push({ fact: fact as unknown as AcceptLine, within });
      return true;
    }
    if (word.text !== 'expects') return false;
    const fact = readLine(this.#hand, expectsForm, statement);
    if (fact !== undefined) (this.#expects ??= []).push({ fact: fact as unknown as ExpectLine, within });
    return true;
  }

  #unknownWord(word: WordValue, block: BlockForm | undefined): void {
    const { meant, elsewhere } = this.#guesses.of(word.text, block);
    this.#found.add('word-unknown', word, { word: word.text, block: block?.word, known: wordsIn(block), meant, elsewhere });
  }
}

/** Reads a line into its place in the row of its block; false where it cannot be read. */
function addLine(hand: LineAtHand, form: LineForm, statement: Statement, row: unknown[]): boolean {
  const line = readLine(hand, form, statement);
  if (line === undefined) return false;
  const { place } = form;
  if (form.many) {
    const list = row[place] as unknown[];
    if (list.length === 0) row[place] = [line];
    else list.push(line);
  } else if (row[place] === undefined) row[place] = line;
  else hand.found.addRepeated(form.word, statement, (row[place] as { line: Statement }).line);
  return true;
}

const firstLineOf = (text: string): string => text.split('\n', 1)[0] as string;

const letter = /^\p{L}/u;
const startsWithLetter = (text: string): boolean => {
  const code = text.charCodeAt(0) | 32;
  return (code >= 97 && code <= 122) || letter.test(text);
};

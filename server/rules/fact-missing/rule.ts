import { headPlace } from '../../model/index.ts';
import type { Drive, Installation } from '../../model/index.ts';
import { blocks, nearest, type BlockSpec, type Entity } from '../../vocabulary/index.ts';
import { installationRule, ofTheLanguage, type Related, type Report } from '../rule.ts';
import { blockInWords } from '../words.ts';

type Say = (report: Report) => void;
/** What is read of any block here: its words, and which of its lines could not be read. */
type Read = Pick<Entity, 'kind' | 'name' | 'nameAt' | 'at' | 'unread'> & { readonly facts: Readonly<Record<string, unknown>> };

/** The lines that every block of a kind must have; kinds without any are left out. */
interface Needs {
  readonly word: string;
  readonly spec: BlockSpec;
  readonly required: readonly string[];
  readonly within: readonly Needs[];
}

function needsOf(word: string, spec: BlockSpec): Needs {
  return {
    word,
    spec,
    required: Object.keys(spec.lines).filter((line) => spec.lines[line]?.required === true),
    within: Object.entries(spec.blocks).flatMap(([inner, block]) => {
      const needs = needsOf(inner, block);
      return needs.required.length > 0 || needs.within.length > 0 ? [needs] : [];
    }),
  };
}

const allNeeds = Object.entries(blocks).map(([word, spec]) => needsOf(word, spec));

/** What a drive needs to be told, by the kind of its model, and what such a model needs to say of itself. */
const byDriveKind = {
  'linear-ram': { drive: ['post-bracket', 'leaf-bracket'], model: ['stroke', 'speed'], says: 'a linear ram' },
  'articulated-arm': { drive: ['shaft', 'leaf-bracket'], model: ['arms', 'shaft-speed'], says: 'a drive with an articulated arm' },
  direct: { drive: [], model: ['rotation', 'shaft-speed'], says: 'a direct drive' },
  rack: { drive: [], model: ['speed'], says: 'a rack drive' },
} as const;

export const rule = installationRule({
  name: 'fact-missing',
  severity: 'error',
  scope: 'file',
  title: 'A block does not say something that must be known.',
  why: 'Whatever depends on it is not worked out, and the rules that need it say nothing.',
  remedy: 'Write the line that is missing.',
  source: ofTheLanguage,
  acceptable: false,
  check: (installation, report) => {
    const { entities } = installation.reading;
    for (const needs of allNeeds) for (const entity of entities[needs.word as keyof typeof entities] as readonly Entity[]) checkRequired(needs, entity, report);
    for (const leaf of entities.leaf) if (leaf.facts.opens === undefined && leaf.facts.slides === undefined) lacks(leaf, blocks.leaf, ['opens', 'slides'], report);
    for (const model of entities['drive-model']) {
      const kind = model.facts.kind?.value;
      if (kind !== undefined) for (const fact of byDriveKind[kind].model) if (model.facts[fact] === undefined) lacks(model, blocks['drive-model'], [fact], report, { because: `it is ${byDriveKind[kind].says}` });
    }
    for (const model of entities['sensor-model']) {
      const output = model.facts.output?.value;
      if (output === 'resistive' && model.facts.terminator === undefined) lacks(model, blocks['sensor-model'], ['terminator'], report, { because: 'it reports by its resistance' });
      if (output === 'relay' && model.facts.contact === undefined) lacks(model, blocks['sensor-model'], ['contact'], report, { because: 'it reports by a relay' });
    }
    checkDrives(installation, report);
  },
});

/** True for a line that may stand more than once and does not stand at all. */
const isEmpty = (fact: unknown): boolean => Array.isArray(fact) && fact.length === 0;

function checkRequired(needs: Needs, entity: Entity, report: Say): void {
  const facts = entity.facts as Readonly<Record<string, unknown>>;
  for (const fact of needs.required) if (facts[fact] === undefined || isEmpty(facts[fact])) lacks(entity, needs.spec, [fact], report);
  for (const inner of needs.within) for (const block of entity.blocks[inner.word] ?? []) checkRequired(inner, block, report);
}

function checkDrives({ drives, path }: Installation, report: Say): void {
  for (const drive of drives) {
    const model = drive.model;
    const kind = model?.facts.kind;
    if (model === undefined || kind === undefined) continue;
    // The library says so too, but whoever checks only the site would not hear of it.
    if (model.path !== path)
      for (const fact of byDriveKind[kind.value].model)
        if (model.facts[fact] === undefined && !model.unread.includes(fact))
          report({
            at: drive.modelAt ?? headPlace(drive),
            what: `The model “${model.name}” of “${drive.name}” lacks “${fact}”, which is needed because it is ${byDriveKind[kind.value].says}.`,
            remedy: `Write it in the library, as in “${blocks['drive-model'].lines[fact].example}”.`,
            related: [{ message: 'the model', path: model.path, ...headPlace(model) }],
          });
    for (const fact of byDriveKind[kind.value].drive)
      if (drive.facts[fact] === undefined)
        lacks(asRead(drive), blocks.drive, [fact], report, {
          because: `its model is ${byDriveKind[kind.value].says}`,
          related: [{ message: `${byDriveKind[kind.value].says}, as its model says`, path: model.path, start: kind.line.start, end: kind.line.end }],
        });
  }
}

const asRead = (drive: Drive): Read => ({ kind: 'drive', name: drive.name, nameAt: drive.nameAt, at: drive.at, unread: drive.unread, facts: drive.facts });

/** Says once, at the head of a block, that it has none of these lines; not where such a line stands but could not be read. */
function lacks(block: Read, spec: BlockSpec, facts: readonly string[], report: Say, more: { readonly because?: string; readonly related?: readonly Related[] } = {}): void {
  // A misspelt word is reported by itself, with the word that was probably meant.
  const meant = block.unread.some((word) => facts.includes(word) || (spec.lines[word] === undefined && facts.includes(nearest(word, Object.keys(spec.lines)) ?? '')));
  if (meant) return;
  report({
    at: headPlace(block),
    what: `${blockInWords(block)} lacks ${facts.map((fact) => `“${fact}”`).join(' or ')}${more.because === undefined ? '' : `, which is needed because ${more.because}`}.`,
    remedy: `Write it in the block, as in ${facts.map((fact) => `“${spec.lines[fact]?.example}”`).join(' or ')}.`,
    related: more.related ?? [],
    // Of several that would do, nobody but the writer can choose.
    lacks: facts.length === 1 ? facts : [],
  });
}

import { type Drive, headPlace } from '../../model/index.ts';
import { type BlockSpec, blocks, type Entity, nearest } from '../../vocabulary/index.ts';
import { toModelFact, toModelHead } from '../related.ts';
import { installationRule, ofTheLanguage, type Related, type Report } from '../rule.ts';
import { blockInWords, quoted } from '../words.ts';

type Say = (report: Report) => void;
/** What is read of any block here: its words, and which of its lines could not be read. */
type Read = Pick<Entity, 'kind' | 'name' | 'nameAt' | 'at' | 'unread'> & { readonly facts: Readonly<Record<string, unknown>> };

const none: readonly never[] = [];

/** The lines that every block of a kind must have. */
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
    required: Object.entries(spec.lines).flatMap(([line, { required }]) => (required === true ? line : none)),
    within: Object.entries(spec.blocks)
      .map(([inner, block]) => needsOf(inner, block))
      .filter(({ required, within }) => required.length > 0 || within.length > 0),
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
  check: ({ drives, reading: { entities } }, report) => {
    for (const needs of allNeeds)
      for (const entity of entities[needs.word as keyof typeof entities] as readonly Entity[]) checkRequired(needs, entity, report);
    for (const leaf of entities.leaf)
      if (leaf.facts.opens === undefined && leaf.facts.slides === undefined) lacks(leaf, blocks.leaf, ['opens', 'slides'], report);
    for (const model of entities['drive-model']) {
      const kind = model.facts.kind?.value;
      if (kind !== undefined)
        for (const fact of byDriveKind[kind].model)
          if (model.facts[fact] === undefined)
            lacks(model, blocks['drive-model'], [fact], report, { because: `it is ${byDriveKind[kind].says}` });
    }
    for (const model of entities['sensor-model']) {
      const output = model.facts.output?.value;
      if (output === 'resistive' && model.facts.terminator === undefined)
        lacks(model, blocks['sensor-model'], ['terminator'], report, { because: 'it reports by its resistance' });
      if (output === 'relay' && model.facts.contact === undefined)
        lacks(model, blocks['sensor-model'], ['contact'], report, { because: 'it reports by a relay' });
    }
    for (const drive of drives) if (drive.model !== undefined) checkDrive(drive, drive.model, report);
  },
});

/** True for a line that may stand more than once and does not stand at all. */
const isEmpty = (fact: unknown): boolean => Array.isArray(fact) && fact.length === 0;

function checkRequired(needs: Needs, entity: Entity, report: Say): void {
  const facts = entity.facts as Readonly<Record<string, unknown>>;
  for (const fact of needs.required) if (facts[fact] === undefined || isEmpty(facts[fact])) lacks(entity, needs.spec, [fact], report);
  for (const inner of needs.within) for (const block of entity.blocks[inner.word] ?? none) checkRequired(inner, block, report);
}

function checkDrive(drive: Drive, model: NonNullable<Drive['model']>, report: Say): void {
  const { kind } = model.facts;
  if (kind === undefined) return;
  const { says, model: ofModel, drive: ofDrive } = byDriveKind[kind.value];
  // The library says so too, but whoever checks only the site would not hear of it.
  if (model.path !== drive.installation.path)
    for (const fact of ofModel)
      if (model.facts[fact] === undefined && !model.unread.includes(fact))
        report({
          at: drive.modelAt ?? headPlace(drive),
          what: `The model ${quoted(model.name)} of ${quoted(drive.name)} lacks “${fact}”, which is needed because it is ${says}.`,
          remedy: `Write it in the library, as in “${blocks['drive-model'].lines[fact].example}”.`,
          related: toModelHead('the model', drive.installation, model),
        });
  for (const fact of ofDrive)
    if (drive.facts[fact] === undefined)
      lacks(asRead(drive), blocks.drive, [fact], report, {
        because: `its model is ${says}`,
        related: toModelFact(`${says}, as its model says`, drive.installation, model, kind),
      });
}

const asRead = (drive: Drive): Read => ({
  kind: 'drive',
  name: drive.name,
  nameAt: drive.nameAt,
  at: drive.at,
  unread: drive.unread,
  facts: drive.facts,
});

/** Says once, at the head of a block, that it has none of these lines; not where such a line stands but could not be read. */
function lacks(
  block: Read,
  spec: BlockSpec,
  facts: readonly string[],
  report: Say,
  more: { readonly because?: string; readonly related?: readonly Related[] } = {},
): void {
  // A misspelt word is reported by itself, with the word that was probably meant.
  const meant = block.unread.some((word) => facts.includes(nearest(word, Object.keys(spec.lines)) ?? ''));
  if (meant) return;
  report({
    at: headPlace(block),
    what: `${blockInWords(block)} lacks ${facts.map((fact) => `“${fact}”`).join(' or ')}${more.because === undefined ? '' : `, which is needed because ${more.because}`}.`,
    remedy: `Write it in the block, as in ${facts.map((fact) => `“${spec.lines[fact]?.example}”`).join(' or ')}.`,
    related: more.related ?? none,
    // Of several that would do, nobody but the writer can choose.
    lacks: facts.length === 1 ? facts : none,
  });
}

import { headPlace } from '../../model/index.ts';
import { type BlockSpec, blocks, type Entity } from '../../vocabulary/index.ts';
import { installationRule, ofTheLanguage } from '../rule.ts';
import { blockInWords } from '../words.ts';

const modelled = Object.entries(blocks as Readonly<Record<string, BlockSpec>>).flatMap(([word, spec]) =>
  spec.model === undefined ? [] : [{ word, model: spec.model }],
);

export const rule = installationRule({
  name: 'model-missing',
  severity: 'error',
  title: 'A block does not say of which model it is.',
  why: 'What the product can do is not known, so nothing that depends on it is worked out or checked.',
  remedy: 'Write a colon and the name of its model behind its name.',
  source: ofTheLanguage,
  acceptable: false,
  check: ({ reading }, report) => {
    for (const { word, model } of modelled)
      for (const entity of reading.entities[word as keyof typeof reading.entities] as readonly Entity[]) {
        if (entity.model !== undefined) continue;
        const end = entity.at.body?.start ?? entity.at.end;
        // A colon with no name behind it is reported as such.
        if (
          reading.problems.some((problem) => problem.kind === 'sign-misplaced' && problem.start >= entity.at.start && problem.start < end)
        )
          continue;
        report({
          at: headPlace(entity),
          what: `${blockInWords(entity)} does not say of which ${model} it is.`,
          remedy: `Write a colon and the name of its ${model} behind its name, as in “${word} ${entity.name === '' ? 'NAME' : entity.name} : MODEL”.`,
        });
      }
  },
});

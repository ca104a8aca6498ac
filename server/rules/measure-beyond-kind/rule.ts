import { measureOf } from '../../circuits/index.ts';
import { headPlace, type Sensor } from '../../model/index.ts';
import { toModelFact } from '../related.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

type Kind = NonNullable<NonNullable<Sensor['model']>['facts']['kind']>['value'];

const reasons: Readonly<Record<Kind, string>> = {
  edge: 'an edge has touched somebody before it reports, so that it is C at most',
  beam: 'one ray is stepped over, under and behind and limits no force, so that it is D at most',
  curtain: 'what sees people limits no force, so that it is D or E',
  loop: 'a loop feels vehicles and not people, so that it is none of them',
};

export const rule = installationRule({
  name: 'measure-beyond-kind',
  severity: 'error',
  title: 'The model of a sensor claims a measure that no such device can be.',
  why: 'The measure decides what else must protect people; a device that only claims it leaves them without that. It counts for nothing here.',
  remedy: 'State the measure that the device is, as its kind allows, and fit what is then missing.',
  source: { text: 'EN 12453:2000, 5.5.1 (what C, D and E are)', standing: 'published' },
  acceptable: false,
  check: ({ sensors }, report) => {
    for (const sensor of sensors) {
      const { model } = sensor;
      if (model === undefined) continue;
      const { kind, measure } = model.facts;
      if (kind === undefined || measure === undefined || measureOf(sensor) !== undefined) continue;
      report({
        at: sensor.modelAt ?? headPlace(sensor),
        what: `${quoted(sensor.name)} (${model.name}) is said to be measure ${measure.value}, but ${reasons[kind.value]}.`,
        related: [
          ...toModelFact('what it claims', sensor.installation, model, measure),
          ...toModelFact('what it is', sensor.installation, model, kind),
        ],
      });
    }
  },
});

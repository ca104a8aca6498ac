import { factPlace } from '../../model/index.ts';
import { installationRule, ofTheLanguage } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'drive-force-unfit',
  severity: 'warning',
  scope: 'file',
  title: 'A drive model states a thrust where it turns a shaft, or a torque where it pushes.',
  why: 'The force window of every leaf that it drives is not worked out, and nothing is said of forces that may be too great.',
  remedy: 'State a thrust, in newtons, for a ram or a rack, and a torque, in newton metres, for a shaft.',
  source: ofTheLanguage,
  acceptable: true,
  check: ({ reading }, report) => {
    for (const model of reading.entities['drive-model']) {
      const { kind, thrust, torque } = model.facts;
      if (kind === undefined) continue;
      const pushes = kind.value === 'linear-ram' || kind.value === 'rack';
      const wrong = pushes ? torque : thrust;
      if (wrong === undefined) continue;
      report({
        at: factPlace(model, wrong),
        what: `${quoted(model.name)} is a drive of the kind ${kind.value}, which has ${pushes ? 'a thrust and no torque' : 'a torque and no thrust'}.`,
      });
    }
  },
});

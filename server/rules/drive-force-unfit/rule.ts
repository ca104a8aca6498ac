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
      const kind = model.facts.kind?.value;
      const wrong = kind === 'linear-ram' || kind === 'rack' ? model.facts.torque : kind === undefined ? undefined : model.facts.thrust;
      if (wrong === undefined) continue;
      report({ at: { start: wrong.line.start, end: wrong.line.end }, what: `${quoted(model.name)} is a drive of the kind ${kind ?? ''}, which has ${kind === 'linear-ram' || kind === 'rack' ? 'a thrust and no torque' : 'a torque and no thrust'}.` });
    }
  },
});

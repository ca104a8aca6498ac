import { headPlace } from '../../model/index.ts';
import { commandsOf, inWords, measuresFor, meets, present, requirementFor, strictest } from '../../safeguards/index.ts';
import { installationRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = installationRule({
  name: 'pedestrian-opening-unguarded',
  severity: 'error',
  title: 'The pedestrian opening has no protection of its own.',
  why: 'People on foot pass close to the edge of the one leaf that moves, and a sensor that the panel heeds only for the vehicle opening does not see them.',
  remedy: 'Let the sensors of that leaf watch the pedestrian opening too, or fit one that does.',
  source: { text: 'EN 12453:2000, 5.5.1, Table 1, applied to the part opening', standing: 'published' },
  acceptable: false,
  check: (installation, report) => {
    const { site, motion, leaves } = installation;
    const pedestrian = motion?.facts.pedestrian;
    if (pedestrian === undefined || site?.facts.rules?.value !== 'europe' || site.facts.users === undefined) return;
    const leaf = leaves.find((each) => each.name === pedestrian.leaf.text);
    if (leaf === undefined) return;
    const users = site.facts.users.value;
    const own =
      pedestrian.dwell === undefined
        ? undefined
        : { kind: 'automatic' as const, at: pedestrian.line, control: undefined, cause: 'dwell' as const };
    const commands = own === undefined ? commandsOf(installation).filter((command) => command.kind !== 'automatic') : [own];
    // Where it moves only while a control is held, somebody sees and lets go; whether that is allowed is said by hold-to-run-misuse.
    if (commands.length > 0 && commands.every(({ kind }) => kind === 'hold-to-run' || kind === 'hold-to-run by key')) return;
    const worst = strictest(commands, users);
    const requirement = worst?.requirement ?? requirementFor('impulse, gate not in view', users);
    const measures = measuresFor(leaf, 'pedestrian', true);
    if (meets(measures, requirement)) return;
    report({
      at: pedestrian.line,
      what: `The pedestrian opening of ${quoted(leaf.name)} needs ${requirement}; the sensors that watch it give measure ${present(measures)}.`,
      remedy: `Let sensors with ${inWords[requirement]} watch “pedestrian”, each of them tested before the leaf closes.`,
      related: [{ message: 'the leaf', ...headPlace(leaf) }],
    });
  },
});

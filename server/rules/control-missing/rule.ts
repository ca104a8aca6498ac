import { headPlace, type Installation, type Wire } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { blockLost } from '../unread.ts';
import { quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'control-missing',
  severity: 'error',
  title: 'There are drives, and nothing says how the gate is operated.',
  why: 'How the gate is commanded decides what must protect the people near it; without it that cannot be judged.',
  remedy: 'Write a control block for each way in which the gate is operated, or “dwell” in the motion block if it closes by itself.',
  source: commonPractice,
  acceptable: false,
  check: (installation, report) => {
    const { drives, controls, motion } = installation;
    const first = drives[0];
    if (first === undefined || motion?.facts.dwell !== undefined) return;
    // What only stops the gate starts nothing.
    if (controls.some(({ facts }) => facts.acts?.value !== 'stop')) return;
    if (blockLost(installation, 'control') || (motion !== undefined && motion.unread.length > 0) || hasCommandWire(installation)) return;
    const names = drives.map((drive) => drive.name).filter((name) => name !== '');
    report({
      at: headPlace(first),
      what: `${names.length === 0 ? 'A drive' : quotedList(names)} ${names.length > 1 ? 'move' : 'moves'} the gate, and nothing in the file commands it.`,
      related: installation.panels.slice(0, 4).map((panel) => ({ message: 'the panel that would be commanded', ...headPlace(panel) })),
    });
  },
});

/** A loop in the ground may command the gate without a control block; so may a sensor on a terminal that nobody knows. */
function hasCommandWire({ panels }: Installation): boolean {
  const commands = ({ device, ends }: Wire): boolean =>
    device?.kind !== 'drive' && ends.some(({ terminal }) => terminal === undefined || terminal.role === 'command-input');
  return panels.some(({ wires }) => wires.some(commands));
}

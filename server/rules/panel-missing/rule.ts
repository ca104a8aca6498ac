import { headPlace } from '../../model/index.ts';
import { commonPractice, installationRule } from '../rule.ts';
import { blockLost } from '../unread.ts';
import { quotedList } from '../words.ts';

export const rule = installationRule({
  name: 'panel-missing',
  severity: 'error',
  title: 'There are drives, and no panel that they are wired to.',
  why: 'Without the panel nothing can be said of what stops the gate: no sensor counts, and no setting can be worked out.',
  remedy: 'Write a panel block with the panel’s model and what is wired to it.',
  source: commonPractice,
  acceptable: false,
  check: (installation, report) => {
    const { drives, panels } = installation;
    const first = drives[0];
    if (first === undefined || panels.length > 0 || blockLost(installation, 'panel')) return;
    const names = drives.map((drive) => drive.name).filter((name) => name !== '');
    report({
      at: headPlace(first),
      what: `${names.length === 0 ? 'A drive' : quotedList(names)} ${names.length > 1 ? 'are' : 'is'} there, but no panel.`,
      related: drives.slice(1, 5).map((drive) => ({ message: 'another drive without a panel', ...headPlace(drive) })),
    });
  },
});

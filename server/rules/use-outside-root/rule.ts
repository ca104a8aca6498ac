import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'use-outside-root',
  severity: 'error',
  title: 'A “use” line leads out of the folder that may be read.',
  why: 'Only files of this workspace are read: what lies outside is not there on a colleague’s machine or on a build server.',
  remedy: 'Put the library into the workspace and write its path from this file.',
  acceptable: false,
  explain: ({ detail }) => ({
    what: `${quoted(detail.path)} ${detail.isLink ? 'is a link to a place outside' : 'leads out of'} the folder of this workspace.`,
  }),
});

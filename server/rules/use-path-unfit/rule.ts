import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'use-path-unfit',
  severity: 'error',
  title: 'A “use” line names its file in a way that does not work everywhere.',
  why: 'The same line has to lead to the same file on every machine.',
  remedy: 'Write a path relative to this file, with forward slashes.',
  acceptable: false,
  explain: ({ detail, start, end }, text) => {
    const { path, fault } = detail;
    switch (fault) {
      case 'empty':
        return {
          what: 'The “use” line names no file.',
          remedy: 'Write the path of a library from this file, as in “../library/panels.gate”.',
        };
      case 'backslash':
        return {
          what: `${quoted(path)} has backslashes in it.`,
          remedy: 'Write forward slashes; they work on every system.',
          fixes: text.slice(start, end).includes('\\"')
            ? []
            : [{ title: 'Write forward slashes', edits: [{ start, end, text: text.slice(start, end).replace(/\\+/g, '/') }], safe: false }],
        };
      case 'absolute':
        return { what: `${quoted(path)} is not a path relative to this file.` };
    }
  },
});

import { removal } from '../fixes.ts';
import { problemRule } from '../rule.ts';
import { quoted } from '../words.ts';

export const rule = problemRule({
  name: 'acceptance-expired',
  severity: 'warning',
  title: 'An acceptance is out of date.',
  why: 'Its reason was given for a time that is over, so what it covered is shown again.',
  remedy: 'Mend what it covered, or look at it anew and give it a new end.',
  acceptable: false,
  explain: ({ detail }, text) => {
    const { rule: name, until, still, line } = detail;
    return {
      what: `This acceptance of ${quoted(name)} ended on ${until}; ${still === 0 ? 'there is nothing left for it to cover' : still === 1 ? 'the finding that it covered is still there' : `${still} findings that it covered are still there`}.`,
      remedy: still === 0 ? 'Remove the line.' : 'Mend what it covered; or look at it anew, and give the line a new reason and a new end.',
      unnecessary: still === 0,
      fixes: still === 0 ? removal('Remove this acceptance', text, line.start, line.end, false) : [],
    };
  },
});

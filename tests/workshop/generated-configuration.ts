// What an editor does by itself: remarks, brackets, indentation, and what counts as one word.

/** A whole name (`west-ram`), number or unit: anything between blanks and signs; two dots part. */
const wordPattern = '[^\\s{}":,#±.](?:[^\\s{}":,#±.]|\\.(?!\\.))*';
/** A line up to a remark, with the texts in it as a whole. */
const code = '(?:[^"#]|"(?:[^"\\\\]|\\\\.)*(?:"|$))*?';

export function languageConfiguration(): unknown {
  return {
    comments: { lineComment: '#' },
    brackets: [['{', '}']],
    colorizedBracketPairs: [['{', '}']],
    autoClosingPairs: [
      { open: '{', close: '}', notIn: ['string', 'comment'] },
      { open: '"', close: '"', notIn: ['string', 'comment'] },
    ],
    autoCloseBefore: ' \t\r\n}#',
    surroundingPairs: [
      ['{', '}'],
      ['"', '"'],
    ],
    wordPattern,
    indentationRules: {
      increaseIndentPattern: `^${code}\\{\\s*(?:#.*)?$`,
      decreaseIndentPattern: '^\\s*\\}',
    },
    onEnterRules: [
      // Between the braces of an empty block, and behind a line that opens one.
      { beforeText: `^${code}\\{\\s*$`, afterText: '^\\s*\\}', action: { indent: 'indentOutdent' } },
      { beforeText: `^${code}\\{\\s*(?:#.*)?$`, action: { indent: 'indent' } },
    ],
  };
}

// Generated from the files of this folder by `npm run generate`. Do not edit.
import { output as github } from './github.ts';
import { output as gitlab } from './gitlab.ts';
import { output as json } from './json.ts';
import { output as junit } from './junit.ts';
import { output as lines } from './lines.ts';
import { output as sarif } from './sarif.ts';
import { output as text } from './text.ts';
import type { Output } from './output.ts';

export const allOutputs: readonly Output[] = [
  github,
  gitlab,
  json,
  junit,
  lines,
  sarif,
  text,
];

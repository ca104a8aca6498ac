// Generated from the files of this folder by `npm run generate`. Do not edit.
import { command as check } from './check.ts';
import { command as explain } from './explain.ts';
import { command as figures } from './figures.ts';
import { command as format } from './format.ts';
import { command as serve } from './serve.ts';
import type { Command } from '../command.ts';

export const allCommands: readonly Command[] = [
  check,
  explain,
  figures,
  format,
  serve,
];

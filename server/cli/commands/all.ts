// The commands, in the order of the help.
import type { Command } from '../command.ts';
import { check } from './check.ts';
import { explain } from './explain.ts';
import { figures } from './figures.ts';
import { format } from './format.ts';
import { serve } from './serve.ts';

export const commands: readonly Command[] = [check, format, figures, explain, serve];

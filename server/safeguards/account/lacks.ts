// Facts that nobody states, and how one asks for them.
import { headPlace, type Installation, type PanelModel, type Sensor } from '../../model/index.ts';
import { type Blocks, blocks, type ModelKind } from '../../vocabulary/index.ts';
import type { Lack } from './entries.ts';

interface Named {
  readonly name?: string;
  readonly at: Parameters<typeof headPlace>[0]['at'];
  readonly nameAt?: Parameters<typeof headPlace>[0]['nameAt'];
}

/** A fact of a block of the site itself. */
export function lackOf<B extends keyof Blocks>(block: B, word: keyof Blocks[B]['lines'] & string, of: Named, question: string): Lack {
  return { word, block, of: of.name ?? '', at: headPlace(of), path: undefined, question };
}

type AnyModel = NonNullable<Sensor['model']> | PanelModel;

/** A fact of a model, wherever that stands. */
export function lackOfModel<B extends ModelKind>(
  installation: Installation,
  block: B,
  word: keyof Blocks[B]['lines'] & string,
  model: Pick<AnyModel, 'name' | 'path' | 'at' | 'nameAt'>,
  question: string,
): Lack {
  return { word, block, of: model.name, at: headPlace(model), path: model.path === installation.path ? undefined : model.path, question };
}

/** True when a line that would say it may stand among those of a block that could not be read: it was reported there. */
export function isLost(unread: readonly string[], block: keyof Blocks, word: string): boolean {
  return unread.length > 0 && unread.some((one) => one === word || !Object.hasOwn(blocks[block].lines, one));
}

// What the extension and the page say to each other. What comes from the page is read here as if a stranger had sent it.
import type { PreviewAnswer } from '../../server/lsp/requests.ts';

export type ExportFormat = 'svg' | 'png';

/** What the editor keeps for the page when its window is loaded anew; the page writes it, the extension reads `uri` and `stays`. */
export interface Kept {
  readonly uri?: string;
  readonly stays?: boolean;
  readonly drawing?: string;
  readonly asTable?: boolean;
  readonly partsHidden?: boolean;
  readonly time?: number;
  readonly speed?: number;
  /** By drawing: how far it is magnified, and which point of it (shares of its width and height) is in the middle. */
  readonly views?: Readonly<Record<string, View>>;
}
export interface View {
  readonly zoom: number;
  readonly x: number;
  readonly y: number;
}

export type ToPage =
  /** Which file is shown, and whether another active editor changes that. */
  | { readonly type: 'file'; readonly uri: string; readonly name: string; readonly stays: boolean }
  | { readonly type: 'answer'; readonly uri: string; readonly answer: PreviewAnswer }
  /** Things at the cursor, the innermost first. */
  | { readonly type: 'cursor'; readonly things: readonly string[] }
  /** In words for people; the drawing that is there stays. */
  | { readonly type: 'trouble'; readonly message: string }
  | {
      readonly type: 'rasterise';
      readonly number: number;
      readonly svg: string;
      readonly width: number;
      readonly height: number;
      readonly scale: number;
    };

export type FromPage =
  | { readonly type: 'ready' }
  | { readonly type: 'go'; readonly thing: string }
  | { readonly type: 'stay'; readonly stays: boolean }
  | { readonly type: 'export'; readonly drawing: string; readonly format: ExportFormat }
  /** `png` in base64; none where the picture could not be made. */
  | { readonly type: 'rasterised'; readonly number: number; readonly png?: string }
  | { readonly type: 'problems' };

const isRecord = (given: unknown): given is Readonly<Record<string, unknown>> =>
  typeof given === 'object' && given !== null && !Array.isArray(given);

/** A message of the page; undefined when it is none. */
export function readMessage(given: unknown): FromPage | undefined {
  if (!isRecord(given)) return undefined;
  const { type, thing, stays, drawing, format, number, png } = given;
  switch (type) {
    case 'ready':
    case 'problems':
      return { type };
    case 'go':
      return typeof thing === 'string' ? { type, thing } : undefined;
    case 'stay':
      return typeof stays === 'boolean' ? { type, stays } : undefined;
    case 'export':
      return typeof drawing === 'string' && (format === 'svg' || format === 'png') ? { type, drawing, format } : undefined;
    case 'rasterised':
      if (typeof number !== 'number') return undefined;
      return typeof png === 'string' && /^[A-Za-z0-9+/]+={0,2}$/.test(png) ? { type, number, png } : { type, number };
    default:
      return undefined;
  }
}

/** What was kept, as far as it still makes sense. */
export function readKept(given: unknown): Kept {
  if (!isRecord(given)) return {};
  const { uri, stays, drawing, asTable, partsHidden, time, speed, views } = given;
  const positive = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value) && value >= 0;
  const read: Record<string, View> = {};
  if (isRecord(views))
    for (const [id, view] of Object.entries(views))
      if (isRecord(view) && positive(view['zoom']) && view['zoom'] >= 1 && positive(view['x']) && positive(view['y']))
        read[id] = { zoom: view['zoom'], x: view['x'], y: view['y'] };
  return {
    ...(typeof uri === 'string' ? { uri } : {}),
    ...(typeof stays === 'boolean' ? { stays } : {}),
    ...(typeof drawing === 'string' ? { drawing } : {}),
    ...(typeof asTable === 'boolean' ? { asTable } : {}),
    ...(typeof partsHidden === 'boolean' ? { partsHidden } : {}),
    ...(positive(time) ? { time } : {}),
    ...(positive(speed) ? { speed } : {}),
    views: read,
  };
}

// Every setting there is: one schema, from which the extension's settings page, the manual's list and the reading of what a
import { type Topic, topics } from '../engine/inside.ts';

// client sends are made. Other editors send the same names as one object: `{ "values": { "show": true } }`.
// Plain data and no protocol: tests and the generator read it too.

interface SettingBase {
  /** For people, in a sentence or two. */
  readonly doc: string;
  /** `folder`: may differ from folder to folder. `window`: one for all. */
  readonly scope: 'folder' | 'window';
}
export interface SwitchSetting extends SettingBase {
  readonly kind: 'switch';
  readonly normally: boolean;
}
export interface ChoiceSetting<Option extends string = string> extends SettingBase {
  readonly kind: 'choice';
  readonly options: Readonly<Record<Option, string>>;
  readonly normally: NoInfer<Option>;
}
export type Setting = SwitchSetting | ChoiceSetting;

const onOff = (doc: string, normally = true): SwitchSetting => ({ kind: 'switch', doc, normally, scope: 'folder' });
const choice = <Option extends string>(
  doc: string,
  options: Readonly<Record<Option, string>>,
  normally: NoInfer<Option>,
  scope: SettingBase['scope'] = 'window',
): ChoiceSetting<Option> => ({ kind: 'choice', doc, options, normally, scope });

/** One switch for each topic of the figures. */
const values = Object.fromEntries(
  Object.entries(topics).map(([topic, { doc, shown }]) => [`values.${topic}`, onOff(`Among the derived values: ${doc}.`, shown)]),
) as {
  readonly [Name in Topic as `values.${Name}`]: SwitchSetting;
};

/** By their names below `pintle.`. */
export const settings = {
  'values.show': onOff(
    'Show derived values behind the lines that cause them. The switches below choose which; hovering shows all of them.',
  ),
  ...values,
  'lenses.show': onOff('Show above leaves, drives, panels and the site what is found in them, and how near they come to a limit.'),
  'preview.follow': onOff('The preview shows the .gate file whose editor is active. Off: it stays with the file that it was opened for.'),
  'preview.export': choice(
    'Colours of drawings that are saved from the preview.',
    { light: 'On white, in colour.', dark: 'On a dark ground, in colour.', print: 'On white, in shades of grey.' },
    'light',
  ),
  'trace.server': choice(
    'What the output channel records of the talk between editor and language server.',
    { off: 'Nothing.', messages: 'Which messages went to and fro.', verbose: 'The messages in full.' },
    'off',
  ),
} as const satisfies Readonly<Record<string, Setting>>;

type Known = typeof settings;
export type SettingName = keyof Known;
type ValueOf<S> = S extends { readonly kind: 'switch' } ? boolean : S extends ChoiceSetting<infer Option> ? Option : never;

/** A value for each setting. */
export type Settings = { readonly [Name in SettingName]: ValueOf<Known[Name]> };

/** What holds where nobody has said anything. */
export const normally: Settings = readSettings(undefined);

/**
 * The settings that a client sent, as an object that is nested along the dots, or with the dotted names themselves.
 * What is missing or does not fit is as it normally is; nothing that is sent makes this fail.
 */
export function readSettings(given: unknown): Settings {
  const read: Record<string, boolean | string> = {};
  for (const [name, setting] of Object.entries<Setting>(settings)) {
    const value = lookUp(given, name);
    const fits =
      setting.kind === 'switch' ? typeof value === 'boolean' : typeof value === 'string' && Object.hasOwn(setting.options, value);
    read[name] = fits ? (value as boolean | string) : setting.normally;
  }
  return read as unknown as Settings;
}

function lookUp(given: unknown, name: string): unknown {
  if (typeof given !== 'object' || given === null) return undefined;
  if (Object.hasOwn(given, name)) return (given as Record<string, unknown>)[name];
  let at: unknown = given;
  for (const part of name.split('.'))
    at = typeof at === 'object' && at !== null && Object.hasOwn(at, part) ? (at as Record<string, unknown>)[part] : undefined;
  return at;
}

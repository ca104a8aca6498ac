// The extension's settings, from the one schema in server/lsp/settings.ts, and the colours of words, from server/editor/tokens.ts.
import { tokenModifiers, tokenTypes } from '../../server/editor/index.ts';
import { type Setting, settings } from '../../server/lsp/settings.ts';

type Json = Record<string, unknown>;

const scopes = { folder: 'resource', window: 'window' } as const;

const entry = (setting: Setting, order: number): Json => ({
  ...(setting.kind === 'switch'
    ? { type: 'boolean' }
    : { type: 'string', enum: Object.keys(setting.options), enumDescriptions: Object.values(setting.options) }),
  default: setting.normally,
  scope: scopes[setting.scope],
  order,
  markdownDescription: setting.doc,
});

/** `contributes.configuration` of the manifest. */
export const configuration = (): Json => ({
  title: 'Pintle',
  properties: Object.fromEntries(
    Object.entries<Setting>(settings).map(([name, setting], index) => [`pintle.${name}`, entry(setting, index)]),
  ),
});

type Kind = { readonly doc?: string; readonly like?: string; readonly scopes: readonly string[] };
const kinds = Object.entries<Kind>(tokenTypes);

/** `contributes.semanticToken…`: the types that are our own, what they are like, and what themes call them all. */
export const tokenContributions = (): Json => ({
  semanticTokenTypes: kinds.flatMap(([id, { doc, like }]) => (doc === undefined ? [] : [{ id, superType: like, description: doc }])),
  semanticTokenModifiers: Object.entries<{ readonly doc: string | undefined }>(tokenModifiers).flatMap(([id, { doc }]) =>
    doc === undefined ? [] : [{ id, description: doc }],
  ),
  semanticTokenScopes: [{ language: 'pintle', scopes: Object.fromEntries(kinds.map(([id, { scopes }]) => [id, scopes])) }],
});

/** A manifest with its settings and colours replaced; all else as it was. */
export function withConfiguration(manifest: string): string {
  const read = JSON.parse(manifest) as Json & { contributes: Json };
  read.contributes['configuration'] = configuration();
  Object.assign(read.contributes, tokenContributions());
  return JSON.stringify(read, undefined, 2) + '\n';
}

/** The manual's list of them. */
export function settingsPage(): string[] {
  const lines = [
    '## Settings of the editor',
    '',
    'In VS Code under `pintle.`; other editors send them as one object, nested along the dots.',
    '',
  ];
  for (const [name, setting] of Object.entries<Setting>(settings)) {
    const values =
      setting.kind === 'switch'
        ? 'true or false'
        : Object.entries(setting.options)
            .map(([option, doc]) => `\`${option}\`: ${doc}`)
            .join(' ');
    lines.push(
      `- \`${name}\` (${values}${setting.kind === 'switch' ? ', ' : ' Normally '}${setting.kind === 'switch' ? 'normally ' : ''}\`${String(setting.normally)}\`). ${setting.doc}`,
    );
  }
  return [...lines, ''];
}

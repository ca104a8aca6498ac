// What a feature of the protocol is: what the server says that it can do, and the handler that does it. One file each in
// this folder; the list of them is generated.
import type { Connection, ServerCapabilities, WorkspaceEdit } from 'vscode-languageserver';
import type { Analysis, Edit } from '../../engine/index.ts';
import type { Answering } from '../answering.ts';
import type { Client } from '../client.ts';
import type { Configuration } from '../configuration.ts';
import { type Around, toEdits } from '../convert.ts';
import type { Document, Lines } from '../documents.ts';
import type { Pace } from '../pace.ts';
import type { Reports } from '../reports.ts';
import type { Session } from '../session.ts';

/** All that a feature may use. */
export interface Room {
  readonly connection: Connection;
  readonly session: Session;
  readonly pace: Pace;
  readonly client: Client;
  readonly answers: Answering;
  readonly reports: Reports;
  readonly configuration: Configuration;
  readonly linesFor: (analysis: Analysis) => Lines;
  readonly aroundFor: (analysis: Analysis) => Around;
}

export interface Feature {
  /** Told to the client at the start; nothing for a request of our own. */
  readonly capabilities?: (client: Client) => Partial<ServerCapabilities>;
  readonly answer: (room: Room) => void;
}

/** Edits of one open text, with the version they are meant for where the client can take it. */
export const textEdit = (client: Client, document: Document, version: number, edits: readonly Edit[], lines: Lines): WorkspaceEdit =>
  client.takes.edits.versions
    ? { documentChanges: [{ textDocument: { uri: document.uri, version }, edits: toEdits(edits, lines) }] }
    : { changes: { [document.uri]: toEdits(edits, lines) } };

/** Edits of several texts; `version` is that of an open one, and null for a file that is not open. */
export function workspaceEdit(
  client: Client,
  changes: readonly { readonly uri: string; readonly version: number | null; readonly edits: readonly Edit[]; readonly lines: Lines }[],
): WorkspaceEdit {
  if (client.takes.edits.versions)
    return {
      documentChanges: changes.map(({ uri, version, edits, lines }) => ({ textDocument: { uri, version }, edits: toEdits(edits, lines) })),
    };
  return { changes: Object.fromEntries(changes.map(({ uri, edits, lines }) => [uri, toEdits(edits, lines)])) };
}

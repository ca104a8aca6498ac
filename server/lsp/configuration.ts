// The settings of each folder: asked of a client that answers for them, taken from what it pushes where it does not.
import type { Connection } from 'vscode-languageserver';
import type { Client } from './client.ts';
import { normally, readSettings, type Settings } from './settings.ts';
import { isInside } from './uris.ts';

/** Longest wait for settings that have been asked for before an answer goes without them, in milliseconds. */
const longestWait = 1000;

export interface Folder {
  readonly path: string;
  /** As the client wrote it. */
  readonly uri: string;
}

export interface Configuration {
  /** The settings that hold for a file: those of the innermost folder that it is in, or else those of no folder. */
  readonly of: (path: string) => Promise<Settings>;
  /** Asks anew; nothing where the client cannot be asked. */
  readonly fetch: () => Promise<void>;
  /** What the client has pushed, for all folders. */
  readonly push: (given: unknown) => void;
}

/** `changed` is told when the settings of any folder are others. */
export function createConfiguration(
  connection: Connection,
  client: Client,
  folders: () => readonly Folder[],
  changed: () => void,
): Configuration {
  let general: Settings | undefined;
  let byFolder: ReadonlyMap<string, Settings> = new Map();
  let latest = 0;
  let coming: Promise<void> | undefined;

  const keep = (one: Settings, others: ReadonlyMap<string, Settings>): void => {
    const shown = (of: Settings | undefined, by: ReadonlyMap<string, Settings>): string => JSON.stringify([of, [...by]]);
    const isSame = shown(general, byFolder) === shown(one, others);
    [general, byFolder] = [one, others];
    if (!isSame) changed();
  };
  /** What the client does not say is as it was said at the start. */
  const read = (given: unknown): Settings => readSettings(given ?? client.options.settings);

  const ask = async (): Promise<void> => {
    const turn = ++latest;
    const asked = folders();
    const answer: unknown = await connection.sendRequest('workspace/configuration', {
      items: [{ section: 'pintle' }, ...asked.map(({ uri }) => ({ scopeUri: uri, section: 'pintle' }))],
    });
    // Asked again meanwhile: what comes then is newer.
    if (turn !== latest) return;
    const values: readonly unknown[] = Array.isArray(answer) ? answer : [];
    keep(read(values[0]), new Map(asked.map(({ path }, index) => [path, read(values[index + 1])])));
  };

  return {
    of: async (path) => {
      if (coming !== undefined) {
        let timer: ReturnType<typeof setTimeout> | undefined;
        const late = new Promise<void>((resolve) => {
          timer = setTimeout(resolve, longestWait);
        });
        await Promise.race([coming, late]);
        clearTimeout(timer);
      }
      let inner: string | undefined;
      for (const folder of byFolder.keys())
        if (isInside(path, folder) && (inner === undefined || folder.length > inner.length)) inner = folder;
      const own = inner === undefined ? undefined : byFolder.get(inner);
      return own ?? general ?? (client.options.settings === undefined ? normally : read(undefined));
    },
    fetch: async () => {
      if (!client.takes.configuration) return;
      const job = ask().finally(() => {
        if (coming === quiet) coming = undefined;
      });
      const quiet = job.catch(() => undefined);
      coming = quiet;
      await job;
    },
    push: (given) => keep(read(given), new Map()),
  };
}

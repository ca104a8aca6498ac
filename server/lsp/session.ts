// What the server knows: the open texts, the folders, a workspace of the engine for each root, and the files on the
// disk. No message of the protocol is read or written here; `ask` is the one way out, for files of the client's.

import { holdsModels } from '../editor/index.ts';
import { type Analysis, type ReadResult, type Steps, Workspace } from '../engine/index.ts';
import { looseRoot } from '../engine/inside.ts';
import { type Document, Documents } from './documents.ts';
import type { Host } from './host.ts';
import type { Pace } from './pace.ts';
import { isInside, isOnDisk, pathOf, uriOf } from './uris.ts';

export interface Session {
  readonly documents: Documents;
  /** The day of every verdict, YYYY-MM-DD. */
  readonly today: () => string;
  /** Absolute paths of the workspace folders. */
  readonly folders: () => readonly string[];
  readonly setFolders: (folders: readonly string[]) => void;
  /** The folder that no `use` of a file may leave. */
  readonly rootOf: (path: string) => string;
  readonly workspaceOf: (path: string) => Workspace;
  /** The analysis of an open text as it is now; libraries that are still to come are left out of it. */
  readonly analyseNow: (document: Document) => Analysis;
  /**
   * The same once every library has come, worked out with rests in between; undefined when the text is closed meanwhile.
   * `quick` is content with one that lacks the rules that take long; where they take no time worth mention, they are in it.
   */
  readonly analyse: (document: Document, need?: 'quick' | 'whole') => Promise<Analysis | undefined>;
  /** The text of a file as it is now, open or not; or why there is none. */
  readonly read: (path: string) => ReadResult;
  /** Changes when a file on the disk changes; undefined where there is none or no disk. */
  readonly stamp: (path: string) => string | undefined;
  /** A file that need not be open, judged once and not kept; or why it cannot be. */
  readonly judgeFile: (path: string) => Promise<Analysis | Exclude<ReadResult, object>>;
  /** A text as it is open, or else the file as it lies on the disk; undefined where there is none. */
  readonly analysisOf: (uri: string, need?: 'quick' | 'whole') => Promise<Analysis | undefined>;
  /** A file, or with a folder everything under it, is not what it was. */
  readonly changed: (path: string, what: 'edited' | 'created' | 'changed' | 'deleted') => void;
  /** Open texts that can see a file. */
  readonly readersOf: (path: string) => Document[];
  readonly textOf: (path: string, workspace: Workspace) => string | undefined;
  readonly uriOf: (path: string) => string;
  /** Lists the .gate files of the folders, if there is a disk. */
  readonly findFiles: () => Promise<void>;
  /** Waits until the files of the folders are listed. True where `files` then holds every file that could see this one. */
  readonly knowsAllAround: (path: string) => Promise<boolean>;
  readonly files: () => readonly string[];
  /** Files that are known to hold models, inside a root. */
  readonly libraries: (root: string) => string[];
  /** Looks again at the libraries on the disk, for clients that do not watch files; says which have changed. */
  readonly recheck: () => string[];
  readonly closed: (document: Document) => void;
}

export interface SessionOptions {
  readonly host: Host;
  readonly pace: Pick<Pace, 'timed' | 'rester' | 'driven'>;
  /** Asks the client for the text of a file. */
  readonly ask: (uri: string) => Promise<ReadResult>;
}

/** Longest piece of an analysis before others have their turn, in milliseconds. */
const longestStep = 5;
/**
 * Characters of a text that is judged whole in a millisecond or two: nothing of it is put off, and it needs no rests. By size and not by
 * the clock, so that the same text is always answered alike.
 */
const smallText = 20_000;

export function createSession({ host, pace, ask }: SessionOptions): Session {
  const { timed } = pace;
  const documents = new Documents();
  let folders: readonly string[] = [];
  const workspaces = new Map<string, Workspace>();
  /** Texts of the client's own files, and those under way. */
  const fetched = new Map<string, ReadResult>();
  const fetching = new Map<string, Promise<void>>();
  const stamps = new Map<string, string | undefined>();
  /** Every known file of the folders, and whether it holds models. */
  const index = new Map<string, boolean>();

  const read =
    (root: string) =>
    (path: string): ReadResult => {
      const { disk } = host;
      if (disk !== undefined && isOnDisk(path) && disk.leaves(path, root)) return 'outside';
      const open = documents.at(path);
      if (open !== undefined) return { text: open.text };
      if (disk !== undefined && isOnDisk(path)) {
        stamps.set(path, disk.stamp(path));
        return disk.read(path, root);
      }
      if (path.startsWith('untitled:')) return 'missing';
      const known = fetched.get(path);
      if (known !== undefined) return known;
      if (!fetching.has(path)) fetch(path);
      return 'waiting';
    };

  const fetch = (path: string): void => {
    const job = ask(uriOf(path))
      .catch((): ReadResult => 'unreadable')
      .then((result) => {
        // A change that came meanwhile has taken this job's place away: its answer is of yesterday.
        if (fetching.get(path) !== job) return;
        fetching.delete(path);
        fetched.set(path, result);
        forget(path);
      });
    fetching.set(path, job);
  };

  const forget = (path: string): void => {
    for (const [root, workspace] of workspaces) if (isInside(path, root)) workspace.changed(path);
  };

  const rootOf = (path: string): string => {
    let best: string | undefined;
    for (const folder of folders) if (isInside(path, folder) && (best === undefined || folder.length > best.length)) best = folder;
    return best ?? looseRoot(path);
  };

  const workspaceOf = (path: string): Workspace => {
    const root = rootOf(path);
    let workspace = workspaces.get(root);
    if (workspace === undefined) {
      workspace = new Workspace({ root, read: read(root) });
      workspaces.set(root, workspace);
    }
    return workspace;
  };

  /** The last analysis of a text. */
  const seen = new WeakMap<Document, Analysis>();

  /** The analysis of a text under way, or done. */
  interface Job {
    readonly text: string;
    readonly day: string;
    readonly workspace: Workspace;
    readonly age: number;
    readonly steps: Steps;
    latest: Analysis | undefined;
  }
  const jobs = new WeakMap<Document, Job>();

  const jobOf = (document: Document): Job => {
    const { path, text } = document;
    const known = jobs.get(document);
    const workspace = workspaceOf(path);
    const day = host.today();
    if (known !== undefined && known.text === text && known.day === day && known.workspace === workspace && known.age === workspace.age)
      return known;
    const job: Job = { text, day, workspace, age: workspace.age, steps: workspace.opening(path, text, day), latest: undefined };
    jobs.set(document, job);
    return job;
  };

  /** Works at a job until it has something new to show or it is time to rest. */
  const goOn = (document: Document, job: Job): void =>
    timed('analysis', () => {
      const from = host.now();
      while (jobOf(document) === job && job.latest?.phase !== 'whole') {
        const { value } = job.steps.next();
        if (value !== undefined) {
          job.latest = value;
          const before = seen.get(document);
          seen.set(document, value);
          if (before?.installation !== value.installation) host.observe?.('analysis', document.path);
          return;
        }
        if (host.now() - from > longestStep) return;
      }
    });

  const analyseNow = (document: Document): Analysis => {
    for (;;) {
      const job = jobOf(document);
      if (job.latest?.phase === 'whole') return job.latest;
      goOn(document, job);
    }
  };

  const analyse: Session['analyse'] = async (document, need = 'quick') => {
    const rest = pace.rester();
    for (;;) {
      if (!documents.isOpen(document)) return undefined;
      const job = jobOf(document);
      const { latest } = job;
      if (latest === undefined || (latest.phase !== 'whole' && (need === 'whole' || job.text.length < smallText))) {
        goOn(document, job);
        await rest();
        continue;
      }
      const waiting = job.workspace.waitingFor(latest).flatMap((path) => fetching.get(path) ?? []);
      if (waiting.length === 0) return latest;
      await Promise.all(waiting);
    }
  };

  const judgeFile: Session['judgeFile'] = async (path) => {
    const workspace = workspaceOf(path);
    const result = read(workspace.root)(path);
    if (typeof result === 'string') return result;
    const { text } = result;
    if (text.length < smallText) return timed('analysis', () => workspace.judge(path, text, host.today()));
    return (await pace.driven('analysis', workspace.judging(path, text, host.today()))) as Analysis;
  };

  const changed: Session['changed'] = (path, what) => {
    fetched.delete(path);
    fetching.delete(path);
    stamps.delete(path);
    if (what !== 'edited' && !path.endsWith('.gate')) {
      // A folder: whatever is known under it.
      for (const known of new Set([
        ...index.keys(),
        ...fetched.keys(),
        ...[...workspaces.values()].flatMap((workspace) => workspace.lookedAt()),
      ]))
        if (known !== path && isInside(known, path)) changed(known, what);
    }
    forget(path);
    if (what === 'deleted') index.delete(path);
    else if (what !== 'edited' && path.endsWith('.gate') && folders.some((folder) => isInside(path, folder))) note(path);
  };

  const note = (path: string): void => {
    const result = host.disk === undefined || !isOnDisk(path) ? undefined : host.disk.read(path, rootOf(path));
    if (typeof result === 'object') index.set(path, holdsModels(result.text));
    else if (result !== undefined) index.delete(path);
  };

  let finding: Promise<void> | undefined;
  const findFiles = (): Promise<void> => (finding = listFiles());
  const listFiles = async (): Promise<void> => {
    const { disk } = host;
    if (disk === undefined) return;
    const found = new Set<string>();
    for (const folder of folders) {
      if (!isOnDisk(folder)) continue;
      for await (const paths of disk.list(folder)) {
        let since = host.now();
        for (const path of paths) {
          found.add(path);
          if (!index.has(path)) note(path);
          if (host.now() - since > 6) {
            await host.tick();
            since = host.now();
          }
        }
      }
    }
    for (const path of index.keys()) if (!found.has(path)) index.delete(path);
  };

  return {
    documents,
    today: () => host.today(),
    folders: () => folders,
    setFolders: (given) => {
      folders = given;
      workspaces.clear();
      for (const path of index.keys()) if (!given.some((folder) => isInside(path, folder))) index.delete(path);
    },
    rootOf,
    workspaceOf,
    analyseNow,
    analyse,
    read: (path) => read(rootOf(path))(path),
    stamp: (path) => (isOnDisk(path) ? host.disk?.stamp(path) : undefined),
    knowsAllAround: async (path) => {
      await (finding ?? findFiles());
      return host.disk !== undefined && isOnDisk(path) && folders.some((folder) => isInside(path, folder));
    },
    judgeFile,
    analysisOf: async (uri, need) => {
      const document = documents.get(uri);
      if (document !== undefined) return await analyse(document, need);
      const judged = await judgeFile(pathOf(uri));
      return typeof judged === 'string' ? undefined : judged;
    },
    changed,
    readersOf: (path) =>
      documents.byUse().filter((document) => document.path !== path && seen.get(document)?.shelf.useOf.has(path) === true),
    textOf: (path, workspace) =>
      documents.at(path)?.text ?? (isInside(path, workspace.root) ? workspace.library(path)?.reading.tree.text : undefined),
    uriOf: (path) => documents.at(path)?.uri ?? uriOf(path),
    findFiles,
    files: () => [...index.keys()],
    libraries: (root) => {
      const known = new Set<string>();
      for (const [path, holds] of index) if (holds && isInside(path, root)) known.add(path);
      const workspace = workspaces.get(root);
      for (const path of workspace?.lookedAt() ?? []) if (workspace?.library(path) !== undefined) known.add(path);
      for (const document of documents.byUse()) if (isInside(document.path, root) && holdsModels(document.text)) known.add(document.path);
      return [...known];
    },
    recheck: () => {
      const { disk } = host;
      if (disk === undefined) return [];
      const stale = [...stamps]
        .filter(([path, stamp]) => documents.at(path) === undefined && disk.stamp(path) !== stamp)
        .map(([path]) => path);
      for (const path of stale) changed(path, disk.stamp(path) === undefined ? 'deleted' : 'changed');
      return stale;
    },
    closed: (document) => {
      const workspace = workspaceOf(document.path);
      workspace.close(document.path);
      // What others see of it is the file again and no longer the open text.
      changed(document.path, 'edited');
      if (!folders.includes(workspace.root) && !documents.byUse().some((other) => workspaceOf(other.path) === workspace))
        workspaces.delete(workspace.root);
    },
  };
}

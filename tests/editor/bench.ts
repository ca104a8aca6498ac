// One small workspace in memory for the tests of the editor room. `|` in a text is the caret.
import { readdirSync, readFileSync } from 'node:fs';
import { type Analysis, Workspace } from '../../server/engine/index.ts';
import { at } from '../kit/marker.ts';

export const asOf = '2026-11-20';
const libraryFolder = new URL('../../examples/library/', import.meta.url);

/** The library of the examples, under the paths it has in the workspace of the tests. */
export const library: ReadonlyMap<string, string> = new Map(
  readdirSync(libraryFolder)
    .filter((name) => name.endsWith('.gate'))
    .map((name) => [`/site/library/${name}`, readFileSync(new URL(name, libraryFolder), 'utf8')]),
);

export interface Bench {
  readonly workspace: Workspace;
  readonly files: Map<string, string>;
  readonly analysis: Analysis;
  readonly text: string;
  readonly offset: number;
  readonly textOf: (path: string) => string | undefined;
}

/** A text with its caret opened as a file beside the library. */
export function bench(marked: string, path = '/site/gates/north.gate', more: Readonly<Record<string, string>> = {}): Bench {
  const { text, offset } = at(marked);
  const files = new Map([...library, ...Object.entries(more), [path, text] as const]);
  const workspace = new Workspace({
    root: '/site',
    read: (other) => (files.has(other) ? { text: files.get(other) as string } : 'missing'),
  });
  return { workspace, files, text, offset, analysis: workspace.open(path, text, asOf), textOf: (other) => files.get(other) };
}

/** Everything that a site of the tests needs to know of its library. */
export const uses =
  'language 1\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\nuse "../library/cables.gate"\n';

/** A whole small site. `more` is put behind it. */
export const site = (more = ''): string => `${uses}
site "Heron Court" {
  rules europe
  users limited
  supply 230 V 50 Hz
}

leaf west {
  width 2.10 m
  height 1.80 m
  mass 165 kg
  opens inward 95 deg
  closes onto east
}

leaf east {
  width 2.10 m
  mass 165 kg
  opens inward 95 deg
}

drive west-ram : birch-ram {
  moves west
  post-bracket 140 mm by 120 mm
  leaf-bracket 780 mm
}

sensor lower-beam : finch-beam {
  watches closing
  height 200 mm
}

sensor west-edge : finch-edge {
  watches closing
  on west closing-edge
  terminator 8.2 kohm
}

control fobs {
  by transmitter
  acts impulse
}

panel main : rowan-pair {
  wire lower-beam to T0 T1
  wire west-edge to E0 E1
  select reply steps
}

motion {
  slow-zone last 10 %
  seat 1.5 s
  lag opening 3 s
  dwell 25 s
}
${more}`;

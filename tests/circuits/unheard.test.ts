// A device that no panel heeds protects nobody: with it and without it all figures, verdicts, drawings and rows of the tree are
// the same, but for what is said of the device itself.
import { describe, expect, test } from 'vitest';
import { type OverviewNode, overview } from '../../server/editor/index.ts';
import { type Analysis, Workspace } from '../../server/engine/index.ts';
import { inOneGo } from '../../server/model/index.ts';
import { drawingsOf, svgOf } from '../../server/papers/index.ts';
import { marginsOf } from '../../server/rules/index.ts';
import { examples } from '../grammar/examples.ts';

const files = new Map(examples().map(({ path, text }) => ['/w/' + path, text]));
const workspace = new Workspace({ root: '/w', read: (path) => (files.has(path) ? { text: files.get(path) as string } : 'missing') });
const judge = (path: string, text: string): Analysis => workspace.judge(path, text, '2026-11-25');
const sites = [...files].filter(([path, text]) => judge(path, text).installation.kind === 'site');

/** A name that stands in no example. */
const name = 'deaf-ear';
/** What devices claim to be; some of it no such device can be. */
const claims = [
  ['beam', 'D'],
  ['beam', 'E'],
  ['curtain', 'E'],
  ['edge', 'C'],
  ['edge', 'E'],
  ['loop', 'E'],
] as const;
const edges = ['closing-edge', 'opening-edge', 'hinge-edge', 'bottom-edge', 'post-edge'] as const;

/** A device behind the text that says all it can of itself. */
const device = (kind: string, measure: string, on: string | undefined, more = ''): string => `
sensor-model deaf-model {
  kind ${kind}
  output relay
  contact normally-closed
  measure ${measure}
  reaction 400 ms${kind === 'edge' ? '\n  deformation 200 mm' : ''}
  performance-level e
}
sensor ${name} : deaf-model {
  watches closing, opening, pedestrian${on === undefined ? '' : `\n  on ${on}`}
  height 200 mm
}
${more}`;

/** Ways in which a device is there and nobody hears it. */
const unheard: Readonly<Record<string, string>> = {
  'wired to nothing': '',
  'wired to an input that a link bridges': `panel-model deaf-panel {
  terminal Z0 common
  terminal Z1 safety-input normally-closed common Z0
}
panel deaf : deaf-panel {
  wire ${name} to Z1 Z0
  link Z1 Z0
}
`,
  'beside another contact that stays closed': `panel-model deaf-panel {
  terminal Z0 common
  terminal Z1 safety-input normally-closed common Z0
}
panel deaf : deaf-panel {
  wire ${name} to Z1 Z0
  wire deaf-button to Z1 Z0
}
control deaf-button {
  acts hold-to-run
  by key-switch
  sight full
}
`,
};

interface Told {
  readonly figures: unknown;
  readonly margins: unknown;
  readonly findings: unknown;
  readonly drawings: unknown;
  readonly tree: unknown;
}

const own = new Set([name, 'deaf', 'deaf-model', 'deaf-panel', 'deaf-button']);
const isOwn = (text: string): boolean => text.includes('deaf');

/** What is said of a text, without what is said of the device and of the panel that does not hear it. */
function toldOf(analysis: Analysis, from: number): Told {
  const { figures, findings, accepted, installation } = analysis;
  const rows = (nodes: readonly OverviewNode[]): unknown[] =>
    nodes.flatMap(({ label, detail, children, kind, severity }) =>
      own.has(label) ? [] : [[kind, label, detail, severity, rows(children)]],
    );
  const drawings = inOneGo(drawingsOf(installation, [...findings, ...accepted]));
  return {
    figures: figures
      .filter(({ id, at }) => at.start < from && !isOwn(id))
      .map((figure) => [figure.id, figure.value, figure.words?.(), figure.inputs()]),
    margins: marginsOf(installation).flatMap(({ rule, value, limit, kept, at }) =>
      at.start >= from ? [] : [[rule.name, value, limit, kept]],
    ),
    // A promise counts the findings about the device too.
    findings: findings
      .filter(({ rule, start, what }) => rule !== 'expectation-not-met' && start < from && !isOwn(what))
      .map(({ rule, severity, what, start }) => [rule, severity, what, start]),
    drawings: [
      ...drawings.filter(({ id }) => id === 'force' || id === 'timing').map((drawing) => [drawing.description, inOneGo(svgOf(drawing))]),
      // What is drawn, and how it is judged; the words behind it may name what does not help.
      ...drawings.map(({ table }) =>
        table.rows.filter(([first]) => !isOwn(first ?? '')).map((row) => row.slice(0, 2).filter((cell) => !isOwn(cell))),
      ),
    ],
    tree: rows(overview(analysis)),
  };
}

describe.each(sites.map(([path]) => path))('%s', (path) => {
  const text = files.get(path) as string;
  const { leaves } = judge(path, text).installation;
  const places = [undefined, ...leaves.flatMap((leaf) => edges.map((edge) => `${leaf.name} ${edge}`))];

  test.each(Object.keys(unheard))('a device that is %s changes nothing', (way) => {
    // What the panel that hears nothing brings with it, and a control that commands, are there in both.
    const rest = unheard[way] as string;
    const base =
      text +
      device('beam', 'D', undefined, rest)
        .replace(/sensor deaf-ear[^}]*\}\n/, '')
        .replace(/ {2}wire deaf-ear[^\n]*\n/, '');
    const before = toldOf(judge(path, base), text.length);
    for (const [kind, measure] of claims)
      for (const on of places) {
        const after = judge(path, text + device(kind, measure, on, rest));
        expect(after.installation.sensors.some((sensor) => sensor.name === name)).toBe(true);
        expect(toldOf(after, text.length), `${kind} ${measure} on ${on ?? 'no leaf'}`).toEqual(before);
      }
  });
});

describe('the same device, once it is heard, is worth what it is', () => {
  const site = `language 1
drive-model rack {
  kind rack
  speed 0.2 m/s
  stops-in 200 ms
  thrust 800 N
}
leaf gate {
  width 4 m
  mass 300 kg
  slides left 3.5 m
}
drive push : rack {
  moves gate
}
`;
  const panel = (wire: string): string => `panel-model deaf-panel {
  terminal Z0 common
  terminal Z1 safety-input normally-closed common Z0
}
panel deaf : deaf-panel {
  ${wire}
}
`;
  const said = (kind: string, measure: string, on: string | undefined, wire: string): string =>
    JSON.stringify(toldOf(judge('/w/sound/x.gate', site + device(kind, measure, on, panel(wire))), site.length));
  test.each([
    ['beam', 'D', undefined],
    ['curtain', 'E', undefined],
    ['edge', 'C', 'gate closing-edge'],
    ['edge', 'C', 'gate opening-edge'],
    ['edge', 'C', 'gate bottom-edge'],
  ] as const)('%s %s on %s', (kind, measure, on) => {
    expect(said(kind, measure, on, `wire ${name} to Z1 Z0`)).not.toBe(said(kind, measure, on, ''));
  });
});

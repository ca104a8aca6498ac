// What the rules about wiring say of one mistake: one thing; and of wiring without sense: something that can be read.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { faultsOf } from '../kit/messages.ts';
import { applyEdits, judge } from '../kit/pages.ts';

const wiringRules = [
  'terminal-unknown',
  'terminal-used-twice',
  'terminal-unfit',
  'common-wrong',
  'contact-wrong',
  'normally-closed-input-open',
  'input-bridged',
  'link-wrong',
  'sensor-not-wired',
  'sensor-not-registered',
  'panel-missing',
  'control-missing',
  'edge-loop-unterminated',
  'edge-loop-terminated-twice',
  'edge-terminator-wrong',
  'edge-chain-broken',
  'supply-mismatch',
  'panel-too-small',
  'selector-unknown',
  'sensor-out-of-reach',
  'leaf-over-drive-rating',
  'leaf-without-drive',
  'leaf-driven-twice',
  'drive-unfit',
];

const head = 'language 1\nuse "../library/drives.gate"\nuse "../library/panels.gate"\nuse "../library/sensors.gate"\n';
/** A site with nothing wrong in its wiring, of parts that can be replaced. */
const parts = {
  site: 'site "Example" {\n  rules europe\n  users limited\n  supply 230 V 50 Hz\n}\n',
  west: 'leaf west {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\n',
  east: 'leaf east {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\n',
  westArm: 'drive west-arm : birch-arm {\n  moves west\n}\n',
  eastArm: 'drive east-arm : birch-arm {\n  moves east\n}\n',
  relay: 'sensor relay-beam : finch-relay {\n  watches closing\n}\n',
  beam: 'sensor self-beam : finch-beam {\n  watches closing\n}\n',
  low: 'sensor low-edge : finch-edge {\n  watches closing\n  chains-into high-edge\n}\n',
  high: 'sensor high-edge : finch-edge {\n  watches closing\n  terminator 8.2 kohm\n}\n',
  control: 'control fobs {\n  by transmitter\n  acts impulse\n}\n',
  panelHead: 'panel main : rowan-pair {\n',
  selection: '  select reply steps\n',
  drives: '  wire west-arm to LA1 LA2\n  wire east-arm to LB1 LB2\n',
  relayWire: '  wire relay-beam to G1 G0\n  wire relay-beam supply to V1 V0\n  wire relay-beam test to X1 V0\n',
  beamWire: '  wire self-beam to T1 T0\n',
  edgeWire: '  wire low-edge to E1 E0\n',
  links: '  link H1 H0\n  link G2 G0\n',
  registered: '  registered self-beam\n',
  panelEnd: '}\n',
};
const siteWith = (changed: Partial<typeof parts>): string => head + Object.values({ ...parts, ...changed }).join('');
const saidOf = (text: string): string[] => judge(text).findings.flatMap(({ rule }) => (wiringRules.includes(rule) ? [rule] : []));

describe('one mistake gives one message', () => {
  const cases: Record<string, readonly [changed: Partial<typeof parts>, said: readonly string[]]> = {
    'nothing is wrong': [{}, []],
    'a wire names a sensor that is not there': [{ relayWire: '  wire relay-bem to G1 G0\n' }, []],
    'a wire line that cannot be read': [{ relayWire: '  wire relay-beam\n' }, []],
    'a misspelt word': [{ relayWire: '  wir relay-beam to G1 G0\n' }, []],
    'a link line that cannot be read': [{ links: '  link H1 H0\n  link 5 V\n' }, []],
    'a model that is not there': [{ panelHead: 'panel main : rowan-pear {\n' }, []],
    'a sensor model that is not there': [{ beam: 'sensor self-beam : finch-bem {\n  watches closing\n}\n' }, []],
    'a sensor without a model': [{ relay: 'sensor relay-beam {\n  watches closing\n}\n' }, []],
    'a sensor that stands in the file twice': [{ relay: parts.relay + parts.relay }, []],
    'a drive that stands in the file twice': [{ westArm: parts.westArm + parts.westArm }, []],
    'a leaf that stands in the file twice': [{ west: parts.west + parts.west }, []],
    'a drive that moves a leaf that is not there': [{ westArm: 'drive west-arm : birch-arm {\n  moves wset\n}\n' }, []],
    'a chain to an edge that is not there': [
      {
        low: 'sensor low-edge : finch-edge {\n  watches closing\n  chains-into nobody\n}\n',
        edgeWire: '  wire low-edge to E1 E0\n  wire high-edge to E2 E0\n',
      },
      [],
    ],
    'a terminator without its unit': [{ high: 'sensor high-edge : finch-edge {\n  watches closing\n  terminator 8.2\n}\n' }, []],
    'a registered sensor misspelt': [{ registered: '  registered self-bem\n' }, []],
    'a panel without a body': [
      {
        panelHead: 'panel main : rowan-pair\n',
        selection: '',
        drives: '',
        relayWire: '',
        beamWire: '',
        edgeWire: '',
        links: '',
        registered: '',
        panelEnd: '',
      },
      [],
    ],
    'a control misspelt': [{ control: 'contrl fobs {\n  by transmitter\n  acts impulse\n}\n' }, []],
    'a terminal misspelt': [{ links: '  link HI H0\n  link G2 G0\n' }, ['terminal-unknown']],
    'an edge on a safety input': [{ edgeWire: '  wire low-edge to G2 G0\n', links: '  link H1 H0\n' }, ['terminal-unfit']],
    'a drive on the input of a beam': [{ drives: '  wire west-arm to LA1 LA2\n  wire east-arm to G1\n' }, ['terminal-unfit']],
    'a beam on the input of another': [
      { beam: 'sensor self-beam : finch-relay {\n  watches closing\n}\n', beamWire: '  wire self-beam to G1 G0\n', registered: '' },
      ['terminal-used-twice'],
    ],
    'a wire without a return': [{ relayWire: '  wire relay-beam to G1\n' }, ['common-wrong']],
    'a wire that names its input twice': [{ relayWire: '  wire relay-beam to G1 G1\n' }, ['terminal-used-twice']],
    'a wire to the wrong common': [{ relayWire: '  wire relay-beam to G1 E0\n' }, ['common-wrong']],
    'a link to the wrong common': [{ links: '  link H1 H0\n  link G2 E0\n' }, ['link-wrong']],
    'a link to another common than that of a wired input': [{ links: parts.links + '  link G1 E0\n' }, ['input-bridged']],
    'a link of three': [{ links: '  link H1 H0\n  link G2 G0 K0\n' }, ['link-wrong']],
    'a link that is forgotten': [{ links: '  link H1 H0\n' }, ['normally-closed-input-open']],
    'a bridge': [{ links: parts.links + '  link G0 G1\n' }, ['input-bridged']],
    'a bridge by way of an unused input': [{ links: parts.links + '  link G1 G2\n' }, ['input-bridged']],
    'a chain written the wrong way round': [{ edgeWire: '  wire high-edge to E1 E0\n' }, ['sensor-not-wired']],
    'a chain that is not wired': [{ edgeWire: '' }, ['sensor-not-wired']],
    'a chain with both ends wired': [{ edgeWire: '  wire low-edge to E1 E0\n  wire high-edge to E2 E0\n' }, ['edge-chain-broken']],
    'a chain that goes round': [
      { high: 'sensor high-edge : finch-edge {\n  watches closing\n  chains-into low-edge\n}\n' },
      ['edge-chain-broken'],
    ],
    'a terminator in the middle': [
      {
        low: 'sensor low-edge : finch-edge {\n  watches closing\n  chains-into high-edge\n  terminator 8.2 kohm\n}\n',
        high: 'sensor high-edge : finch-edge {\n  watches closing\n}\n',
      },
      ['edge-chain-broken'],
    ],
    'two terminators': [
      { low: 'sensor low-edge : finch-edge {\n  watches closing\n  chains-into high-edge\n  terminator 8.2 kohm\n}\n' },
      ['edge-loop-terminated-twice'],
    ],
    'no terminator': [{ high: 'sensor high-edge : finch-edge {\n  watches closing\n}\n' }, ['edge-loop-unterminated']],
    'another terminator': [
      { high: 'sensor high-edge : finch-edge {\n  watches closing\n  terminator 10 kohm\n}\n' },
      ['edge-terminator-wrong'],
    ],
    'a sensor not learnt': [{ registered: '' }, ['sensor-not-registered']],
    'a single-leaf panel model': [
      {
        site: parts.site,
        panelHead: 'panel-model birch-one "Invented" {\n  leaves 1\n}\n\npanel main : birch-one {\n',
        selection: '',
        drives: '',
        relayWire: '',
        beamWire: '',
        edgeWire: '',
        links: '',
        registered: '',
        relay: '',
        beam: '',
        low: '',
        high: '',
      },
      ['panel-too-small'],
    ],
    'another supply': [{ site: 'site "Example" {\n  rules europe\n  users limited\n  supply 24 V\n}\n' }, ['supply-mismatch']],
  };
  for (const [name, [changed, said]] of Object.entries(cases)) it(name, () => expect(saidOf(siteWith(changed))).toEqual(said));
});

test('no finding stands where no panel is, or no model of it', () => {
  expect(saidOf(siteWith({ panelHead: 'panel main {\n' }))).toEqual([]);
});

test('a supply is held against the limits themselves', () => {
  for (const [volts, said] of [
    [207, []],
    [253, []],
    [206.99, ['supply-mismatch']],
    [253.01, ['supply-mismatch']],
  ] as const)
    expect(saidOf(siteWith({ site: `site "Example" {\n  rules europe\n  users limited\n  supply ${volts} V\n}\n` })), `${volts} V`).toEqual(
      said,
    );
});

test('a terminator is held against 5 % of what the input expects', () => {
  for (const [value, said] of [
    ['7.8', []],
    ['8.6', []],
    ['8.06', []],
    ['7.5', ['edge-terminator-wrong']],
    ['9.1', ['edge-terminator-wrong']],
  ] as const)
    expect(
      saidOf(siteWith({ high: `sensor high-edge : finch-edge {\n  watches closing\n  terminator ${value} kohm\n}\n` })),
      value,
    ).toEqual(said);
});

test('a misspelt terminal is taken for the one that fits', () => {
  const meant = (changed: Partial<typeof parts>): string[] =>
    judge(siteWith(changed)).findings.flatMap((finding) =>
      finding.rule === 'terminal-unknown' ? finding.fixes.map((fix) => fix.edits[0]?.text ?? '') : [],
    );
  expect(meant({ links: '  link H1 HO\n  link G2 G0\n' })).toEqual(['H0']);
  expect(meant({ relayWire: '  wire relay-beam to g1 G0\n' })).toEqual(['G1']);
  expect(meant({ relayWire: '  wire relay-beam to G7 G0\n' })).toEqual(['G1', 'G2']);
  expect(meant({ edgeWire: '  wire low-edge to E1 somewhere\n' })).toEqual([]);
});

const devices = ['west-arm', 'east-arm', 'relay-beam', 'self-beam', 'low-edge', 'high-edge', 'fobs', 'nobody'];
const terminals = [
  'P1',
  'PE',
  'LA1',
  'LA2',
  'LB1',
  'K0',
  'K1',
  'H0',
  'H1',
  'G0',
  'G1',
  'G2',
  'E0',
  'E1',
  'E2',
  'T0',
  'T1',
  'V0',
  'V1',
  'X1',
  'W1',
  'E9',
  'Q',
];
const wire = fc
  .tuple(
    fc.constantFrom(...devices),
    fc.constantFrom('', ' supply', ' test'),
    fc.array(fc.constantFrom(...terminals), { minLength: 1, maxLength: 3 }),
  )
  .map(([device, part, to]) => `  wire ${device}${part} to ${to.join(' ')}\n`);
const link = fc.array(fc.constantFrom(...terminals), { minLength: 1, maxLength: 3 }).map((ends) => `  link ${ends.join(' ')} # why\n`);
const other = fc.constantFrom('  registered self-beam\n', '  select reply steps\n', '  select reply stops\n', '  select lodgic steps\n');
const edgeLines = fc
  .array(
    fc.constantFrom(
      '  terminator 8.2 kohm\n',
      '  terminator 6 kohm ± 1 %\n',
      '  chains-into low-edge\n',
      '  chains-into high-edge\n',
      '  chains-into relay-beam\n',
    ),
    { maxLength: 2 },
  )
  .map((lines) => lines.join(''));

test('wiring without sense is told in sentences, at places in the file, with fixes that nobody takes blindly', () => {
  fc.assert(
    fc.property(fc.array(fc.oneof(wire, wire, link, other), { maxLength: 12 }), edgeLines, edgeLines, (lines, low, high) => {
      const text = siteWith({
        low: `sensor low-edge : finch-edge {\n  watches closing\n${low}}\n`,
        high: `sensor high-edge : finch-edge {\n  watches closing\n${high}}\n`,
        panelEnd: '',
        ...{ selection: '', drives: '', relayWire: '', beamWire: '', edgeWire: '', links: '', registered: lines.join('') + '}\n' },
      });
      const analysis = judge(text);
      const own = analysis.findings.filter(({ rule }) => wiringRules.includes(rule));
      for (const finding of own) {
        expect([finding.what, finding.why, finding.remedy].flatMap((sentence) => faultsOf(sentence, text))).toEqual([]);
        expect(finding.start).toBeLessThan(finding.end);
        expect(finding.end).toBeLessThanOrEqual(text.length);
        for (const fix of finding.fixes) {
          expect(fix.safe).toBe(false);
          const after = judge(applyEdits(text, fix.edits));
          expect(after.findings.some((one) => one.rule === 'value-unexpected' || one.rule === 'word-unknown')).toBe(false);
          expect(after.installation.reading.tree.comments.length).toBe(analysis.installation.reading.tree.comments.length);
        }
      }
      // No two findings of one rule stand at one place and say the same.
      const keys = own.map((finding) => `${finding.rule} ${finding.start} ${finding.what}`);
      expect(new Set(keys).size).toBe(keys.length);
    }),
    { numRuns: 60 },
  );
});

test('a panel with far too much wired to it is still judged', () => {
  const many = 400;
  const edges = Array.from(
    { length: many },
    (_, i) => `sensor e${i} : finch-edge {\n  watches closing\n  chains-into e${(i + 1) % many}\n}\n`,
  ).join('');
  const wires = Array.from(
    { length: many },
    (_, i) => `  wire relay-beam to G${(i % 2) + 1} G0\n  link G1 G2\n  wire e${i} to E1 E0\n`,
  ).join('');
  const said = saidOf(siteWith({ low: edges + parts.low, links: wires }));
  for (const rule of ['terminal-used-twice', 'link-wrong', 'edge-chain-broken']) expect(said).toContain(rule);
});

// Which protections are said to be untested, for which way of commanding the gate, and when nothing is said of them.
import { describe, expect, test } from 'vitest';
import { judge } from '../kit/pages.ts';

const head = 'language 1\nuse "../library/drives.gate"\nuse "../library/sensors.gate"\n';
const site = 'site "Example" {\n  rules europe\n  users public\n}\n';
const leaf = 'leaf west {\n  width 2 m\n  mass 150 kg\n  opens inward 90 deg\n}\n';
const drive = 'drive floor : birch-floor {\n  moves west\n}\n';
const model =
  'panel-model plain {\n  leaves 1\n  terminal A0 common\n  terminal A1 safety-input normally-closed common A0\n  terminal A2 safety-input normally-closed common A0\n  terminal R0 common\n  terminal R1 edge-input common R0 terminator 8.2 kohm\n}\n';
const edge = 'sensor edge : finch-edge {\n  watches closing\n  on west closing-edge\n  terminator 8.2 kohm\n}\n';
const beam = (name: string, sensor = 'finch-relay', on = ''): string => `sensor ${name} : ${sensor} {\n  watches closing\n${on}}\n`;
const panel = (...wires: readonly string[]): string =>
  `panel main : plain {\n  wire edge to R1 R0\n${wires.map((wire) => `  wire ${wire}\n`).join('')}}\n`;
const fobs = (acts: string): string => `control fobs {\n  by transmitter\n  acts ${acts}\n}\n`;
const dwell = 'motion {\n  dwell 20 s\n}\n';
const saidAs = (gravity: 'error' | 'warning', ...parts: readonly string[]) => {
  const text = head + parts.join('');
  return judge(text)
    .findings.filter(({ rule, severity }) => rule === 'protection-untested' && severity === gravity)
    .map(({ start, end, what, related }) => ({
      at: text.slice(start, end),
      what,
      related: related.map((place) => text.slice(place.start, place.end)),
    }));
};
/** What is said where the protection of a closing edge hangs on it. */
const said = (...parts: readonly string[]) => saidAs('error', ...parts);
const untested = (names: readonly string[], itself = ', and the gate moves by itself') =>
  `What protects “west” is not tested before each movement${itself}: ${names.map((name) => `“${name}”: plain cannot test a relay output`).join('; ')}.`;

const gate = [site, leaf, drive, model, edge, beam('low'), panel('low to A1 A0')];

describe('it is said', () => {
  const found = (command: string) => ({ at: 'sensor low', what: untested(['low']), related: [command, 'leaf west'] });
  test('where the gate moves by itself: after the dwell, or at a clock', () => {
    expect(said(...gate, dwell)).toEqual([found('dwell 20 s')]);
    expect(said(...gate, fobs('automatic'))).toEqual([found('acts automatic')]);
    expect(said(...gate, 'control morning {\n  by clock\n  acts impulse\n}\n')).toEqual([found('acts impulse')]);
    expect(said(...gate, fobs('impulse'), dwell)).toEqual([found('dwell 20 s')]);
    expect(said(...gate, fobs('automatic'), 'control key {\n  by key-switch\n  acts impulse\n}\n')).toEqual([found('acts automatic')]);
    const part = 'pedestrian west to 60 % dwell 9 s';
    expect(said(...gate, `motion {\n  ${part}\n}\n`)).toEqual([found(part)]);
  });
  test('where one command starts a whole movement, or a control is held that nobody may see the gate from', () => {
    const commanded = { ...found('acts impulse'), what: untested(['low'], '') };
    expect(said(...gate, fobs('impulse'))).toEqual([commanded]);
    expect(said(...gate, fobs('hold-to-run'))).toEqual([{ ...commanded, related: ['acts hold-to-run', 'leaf west'] }]);
  });
  test('and not where the gate is commanded in no way, or less is asked for than what is tested', () => {
    expect(said(...gate)).toEqual([]);
    const button = 'control button {\n  by push-button\n  acts impulse\n  sight full\n}\n';
    expect(said(...gate.with(0, site.replace('public', 'limited')), button)).toEqual([]);
    expect(said(...gate, button).length).toBe(1);
  });
  test('nor of a leaf that nothing drives', () => {
    expect(said(...gate.filter((part) => part !== drive), dwell)).toEqual([]);
  });
  test('nor where other rules hold', () => {
    expect(said(...gate.with(0, site.replace('europe', 'north-america')), dwell)).toEqual([]);
  });
  test('users that are not stated are the public', () => {
    expect(said(...gate.with(0, site.replace('  users public\n', '')), dwell).map(({ what }) => what)).toEqual([untested(['low'])]);
  });
});

describe('where no closing edge hangs on it', () => {
  const alone = (...parts: readonly string[]) => saidAs('warning', ...parts).map(({ what }) => what);
  const low = '“low” protects people, and is not tested before each movement: plain cannot test a relay output.';
  test('each device that is to protect people is told of, with a warning', () => {
    expect(alone(...gate)).toEqual([low]);
    expect(alone(...gate.filter((part) => part !== drive), dwell)).toEqual([low]);
    const behind = beam('behind').replace('closing', 'opening');
    expect(alone(...gate.with(5, beam('low') + behind).with(6, panel('low to A1 A0', 'behind to A2 A0')), dwell)).toEqual([
      low.replace('low', 'behind'),
    ]);
  });
  test('and not what is tested, or protects nobody', () => {
    expect(alone(site, leaf, drive, model, edge, panel(), dwell)).toEqual([]);
    expect(alone(site, leaf, drive, model, edge, beam('ground', 'finch-loop'), panel('ground to A2 A0'), dwell)).toEqual([]);
  });
});

describe('who is named', () => {
  const named = (sensors: string, ...wires: readonly string[]) =>
    said(site, leaf, drive, model, edge, beam('low'), sensors, panel('low to A1 A0', ...wires), dwell).map(({ what }) => what);
  test('not what the panel does not heed, what claims nothing, and what can do nothing for people', () => {
    expect(named(beam('lone', 'finch-relay', '  on west closing-edge\n'))).toEqual([untested(['low'])]);
    expect(named(beam('ground', 'finch-loop'), 'ground to A2 A0')).toEqual([untested(['low'])]);
    const claims = 'sensor-model heavy {\n  kind loop\n  output relay\n  contact normally-closed\n  measure D\n}\n';
    expect(named(claims + beam('ground', 'heavy'), 'ground to A2 A0')).toEqual([untested(['low'])]);
    expect(named('sensor bare {\n  watches closing\n  on west closing-edge\n}\n', 'bare to A2 A0')).toEqual([untested(['low'])]);
  });
  test('not what watches another movement', () => {
    expect(named(beam('behind').replace('closing', 'opening'), 'behind to A2 A0')).toEqual([untested(['low'])]);
  });
  test('six at most', () => {
    const names = ['b1', 'b2', 'b3', 'b4', 'b5', 'b6', 'b7'];
    const terminals = names.map((_, i) => `  terminal B${i} safety-input normally-closed common A0\n`).join('');
    const all = said(
      site,
      leaf,
      drive,
      model.replace('  terminal R0', `${terminals}  terminal R0`),
      edge,
      ...names.map((name) => beam(name)),
      panel(...names.map((name, i) => `${name} to B${i} A0`)),
      dwell,
    );
    expect(all.map(({ what, related }) => [what, related.length])).toEqual([[untested(names.slice(0, 6)), 7]]);
  });
});

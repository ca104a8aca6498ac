// Drives and the leaves that they move: kinds that do not fit, dead points, and for how long a motor runs.
import { describe, expect, test } from 'vitest';
import { marginsOf, type Rule, ruleNamed } from '../../server/rules/index.ts';
import { judge, saidOf } from '../kit/pages.ts';

const head = 'language 1\nuse "../library/drives.gate"\n';
const said = (rule: string, text: string): string => saidOf(judge(text), ruleNamed(rule) as Rule);

describe('a drive of another kind', () => {
  const rule = 'drive-unfit';
  const site = (leaf: string, model = 'birch-rack', drive = '  moves west\n', models = ''): string =>
    `${head}${models}leaf west {\n  width 2 m\n  mass 150 kg\n${leaf}}\ndrive motor : ${model} {\n${drive}}\n`;
  test('is told of a model in the same file by its line', () => {
    const text = site(
      '  slides left 3 m\n',
      'own-shaft',
      '  moves west\n',
      'drive-model own-shaft {\n  kind direct\n  rotation 110 deg\n  shaft-speed 7 deg/s\n}\n',
    );
    expect(said(rule, text)).toContain(
      'its leaf “west” slides.\n  See line 11, “slides left 3 m”: “west” slides\n  See line 4, “kind direct”: the kind of drive\n',
    );
  });
  test.each([
    ['a leaf that does both', site('  opens inward 90 deg\n  slides left 3 m\n')],
    ['a leaf that does both, by a ram', site('  opens inward 90 deg\n  slides left 3 m\n', 'birch-ram')],
    ['a leaf that does neither', site('')],
    ['a leaf that does neither, by a ram', site('', 'birch-ram')],
    ['a ram for a leaf that swings', site('  opens inward 90 deg\n', 'birch-ram')],
    ['a rack for a leaf that slides', site('  slides left 3 m\n')],
    ['a leaf of which a line cannot be read', site('  opens inward 90 deg\n  slides 3\n')],
    ['a leaf that is not there', site('  opens inward 90 deg\n', 'birch-rack', '  moves wset\n')],
    ['a model that is not there', site('  slides left 3 m\n', 'birch-ruck')],
    ['a model without a kind', site('  slides left 3 m\n', 'blank', '  moves west\n', 'drive-model blank {\n  speed 0.2 m/s\n}\n')],
  ])('is not told of %s', (_, text) => {
    expect(said(rule, text)).toBe('');
  });
});

describe('a thrust or a torque of the wrong kind', () => {
  const model = (kind: string, force: string): string =>
    said('drive-force-unfit', `language 1\ndrive-model one {\n${kind === '' ? '' : `  kind ${kind}\n`}  ${force}\n}\n`);
  test.each([
    ['linear-ram', 'torque 30 N·m', 'a thrust and no torque'],
    ['rack', 'torque 30 N·m', 'a thrust and no torque'],
    ['direct', 'thrust 800 N', 'a torque and no thrust'],
    ['articulated-arm', 'thrust 800 N', 'a torque and no thrust'],
  ])('of the kind %s', (kind, force, words) => {
    expect(model(kind, force)).toBe(`warning on line 4, “${force}”: “one” is a drive of the kind ${kind}, which has ${words}.\n`);
    expect(model(kind, force.startsWith('torque') ? 'thrust 800 N' : 'torque 30 N·m')).toBe('');
  });
  test('is not told of a model that states no kind', () => {
    expect(model('', 'torque 30 N·m')).toBe('');
    expect(model('', 'thrust 800 N')).toBe('');
  });
});

describe('a dead point', () => {
  const rule = 'dead-point-in-travel';
  const site = (opens: string, drive: string): string =>
    said(rule, `${head}leaf west {\n  width 2 m\n  mass 150 kg\n  opens inward ${opens}\n}\ndrive motor : ${drive}\n}\n`);
  const ram = (opens: string, post: string): string =>
    site(opens, `birch-ram {\n  moves west\n  post-bracket ${post}\n  leaf-bracket 800 mm`);
  const wrongSide =
    'on the side that the leaf does not open to. Put it on the other side of the hinge line, or in front of the hinge for a leaf that is pushed open.';
  test('of a ram with its bracket straight beside the hinge, on the wrong side: at 90°, which a leaf of less does not reach', () => {
    expect(ram('100 deg', '0 mm by -150 mm')).toContain(
      `meets a dead point at 90°, before the 100° asked for: hinge and both brackets are then in one line.\n  What to do: The post bracket stands 150 mm ${wrongSide}\n`,
    );
    expect(ram('85 deg', '0 mm by -150 mm')).toBe('');
  });
  test('of a ram in front of the hinge is no matter of the side', () => {
    expect(ram('150 deg', '-150 mm by -150 mm')).toContain('meets a dead point at 135°, before the 150° asked for');
    expect(ram('150 deg', '-150 mm by -150 mm')).not.toContain('What to do');
  });
  test('of a ram in the line of the closed leaf is no matter of the side', () => {
    expect(ram('90 deg', '150 mm by 0 mm')).toContain('meets a dead point at 0°, before the 90° asked for');
    expect(ram('90 deg', '150 mm by 0 mm')).not.toContain('What to do');
  });
  test('of an arm that points at the hinge', () => {
    // The elbow is then 300 mm + 420 mm along the leaf and 380 mm from the shaft: 0.2·cos θ − 0.3·sin θ = −0.35.
    expect(site('115 deg', 'birch-arm {\n  moves west\n  shaft 200 mm by 300 mm\n  leaf-bracket 300 mm')).toBe(
      'error on line 10, “shaft 200 mm by 300 mm”: “motor” meets a dead point at 110°, before the 115° asked for: the arm on the leaf then points at the hinge.\n  See line 6, “opens inward 115 deg”: the opening asked for\n',
    );
    expect(site('109 deg', 'birch-arm {\n  moves west\n  shaft 200 mm by 300 mm\n  leaf-bracket 300 mm')).toBe('');
  });
  test('is not told of a drive that moves no leaf', () => {
    expect(site('90 deg', 'birch-ram {\n  moves nobody\n  post-bracket 150 mm by -150 mm\n  leaf-bracket 800 mm')).toBe('');
  });
});

describe('a duty', () => {
  const rule = 'duty-over-rating';
  const shaft = (name: string, duty: string): string =>
    `drive-model ${name} {\n  kind direct\n  rotation 120 deg\n  shaft-speed 6 deg/s\n${duty}}\n`;
  /** 33 s a cycle, of 72 s: 45.8 %. */
  const site = (duty: string, traffic = '  traffic 50 /h\n', leaf = 'west'): string =>
    `language 1\nsite {\n  rules europe\n  users limited\n${traffic}}\n${shaft('small', duty)}${shaft('other', '  duty 10 %\n')}leaf west {\n  width 3 m\n  mass 250 kg\n  opens inward 90 deg\n}\ndrive floor : small {\n  moves ${leaf}\n}\nmotion {\n  seat 1.5 s\n}\n`;
  const marginsIn = (text: string): boolean[] =>
    marginsOf(judge(text).installation).flatMap((margin) => (margin.rule.name === rule ? [margin.kept] : []));
  test('is kept to a hundredth of itself', () => {
    // 45.833 %: 45.38 % and its hundredth are 45.834 %.
    expect(said(rule, site('  duty 45.38 %\n'))).toBe('');
    expect(marginsIn(site('  duty 45.38 %\n'))).toEqual([true]);
    expect(said(rule, site('  duty 45.37 %\n'))).toContain('“floor” runs for 45.8 % of the busiest hour');
    expect(marginsIn(site('  duty 45.37 %\n'))).toEqual([false]);
  });
  test.each([
    ['the model states none', site('')],
    ['no traffic is stated', site('  duty 10 %\n', '')],
    ['the drive moves no leaf', site('  duty 10 %\n', '  traffic 50 /h\n', 'nobody')],
  ])('is not judged where %s', (_, text) => {
    expect(said(rule, text)).toBe('');
    expect(marginsIn(text)).toEqual([]);
  });
});

import { type Adjuster, factPlace, type Leaf } from '../../model/index.ts';
import { positionOf, turnOf } from '../adjuster/working.ts';
import { type FigureKind, type Input, inDegrees, onlyWhere, type Source } from '../kind.ts';
import { energyOf } from '../kinetic-energy/working.ts';
import { rollingShare } from '../leaf-load/working.ts';
import { elasticPeak, gaugeStiffness } from './maths.ts';
import { type ForceCase, forceWindowOf, gravityAt, hasPush, type SettingWindow } from './working.ts';

const place = (leaf: Leaf): { start: number; end: number } => factPlace(leaf, leaf.facts.mass);
/** The most and the settings stand at what decides them: the guard at the hinge, where one is stated. */
const mostPlace = (leaf: Leaf): { start: number; end: number } => factPlace(leaf, leaf.facts['hinge-guard'] ?? leaf.facts.mass);

const position = (of: ForceCase, at: number): Input =>
  of.swing ? { name: 'deciding opening', value: inDegrees(at), unit: 'deg' } : { name: 'deciding opening', value: at, unit: 'm' };
const lever = (of: ForceCase, value: number): Input => ({ name: 'r, lever there', value, unit: of.unit === 'N' && of.swing ? 'm' : '1' });

function leastInputs({ of, least }: SettingWindow): Input[] {
  const load = of.swing ? 'N·m' : 'N';
  const weight = gravityAt(of, least.at) * (least.way === 'opening' ? 1 : -1);
  const { facts } = of.subject;
  return [
    position(of, least.at),
    lever(of, of.linkage.rate[least.sample] as number),
    { name: of.swing ? 'I, inertia' : 'I, mass', value: of.inertia, unit: of.swing ? 'kg·m²' : 'kg' },
    {
      name: 'a, acceleration of the drive',
      value: of.unit === 'N' ? of.acceleration : inDegrees(of.acceleration),
      unit: of.unit === 'N' ? 'm/s²' : 'deg/s²',
      from: of.acceleration === 0 ? 'its model states no ramp; left out' : `drive-model ${of.drive.model?.name ?? ''}`,
    },
    {
      name: 'friction',
      value: of.friction,
      unit: load,
      ...(facts.friction === undefined
        ? { from: of.swing ? 'not stated, left out' : `not stated, ${rollingShare * 100} % of the weight (from memory)` }
        : {}),
    },
    { name: `gravity, ${least.way}`, value: weight, unit: load },
    {
      name: 'wind',
      value: of.wind,
      unit: load,
      from: of.wind === 0 ? 'no working wind is stated, or the leaf slides' : 'working-wind on the infill',
    },
  ];
}

function mostInputs({ of, most }: SettingWindow): Input[] {
  return [
    position(of, most.at),
    lever(of, most.lever),
    {
      name: 'the limit there',
      value: most.limit,
      unit: 'N',
      from:
        most.limit === 150
          ? 'static, after 0.75 s: nothing is said to make the drive let go'
          : most.gap === undefined
            ? 'no closing edge near'
            : 'by the gap',
    },
    ...(of.swing
      ? [
          {
            name: 'deciding distance from the hinge',
            value: most.radius,
            unit: 'm' as const,
            ...(most.fromMemory ? { from: 'where 50 mm of gap begin (from memory); no guard reaches so far' } : {}),
          },
        ]
      : []),
    ...(most.gap === undefined ? [] : [{ name: 'gap there', value: most.gap, unit: 'm' as const }]),
  ];
}

const needSource: Source = { text: 'plane kinematics and statics, any mechanics textbook', standing: 'derived' };
const limitSource: Source = { text: 'EN 12453:2017, Annex A (400 N, 1400 N, 150 N), with the lever rule', standing: 'published' };
const needFormula =
  'F = (I·a / r + friction ± gravity + wind) / r, greatest over the travel and both movements, the leaf starting from rest';
const limitFormula =
  'F = limit·x / r, least over the travel, both movements and every distance x from the hinge that people can reach: 400 N in gaps of 50 to 500 mm, 1400 N beyond; 150 N where the drive does not let go';

const needed = (unit: 'N' | 'N·m', word: string, push: string): FigureKind => ({
  id: `leaf.NAME.${word}-least`,
  title: `The least ${push} that moves the leaf from rest at any place`,
  unit,
  topic: 'force',
  formula: needFormula,
  source: needSource,
  changedBy: 'a softer start, lighter hinges, less infill or less wind to work in, a longer lever',
  work: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const window = forceWindowOf(leaf);
      if (window?.of.unit === unit) give(leaf.name, window.least.push, place(leaf), () => leastInputs(window));
    }
  },
});

const permitted = (unit: 'N' | 'N·m', word: string, push: string): FigureKind => ({
  id: `leaf.NAME.${word}-most`,
  title: `The most ${push} that the force limits leave at any place`,
  unit,
  topic: 'force',
  formula: limitFormula,
  source: limitSource,
  changedBy: 'a guard further out from the hinge, edges that stop the leaf in time, a drive that lets go, a shorter lever',
  work: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const window = forceWindowOf(leaf);
      if (window?.of.unit === unit && window.most.push < Infinity)
        give(leaf.name, window.most.push, mostPlace(leaf), () => mostInputs(window));
    }
  },
});

interface ForceAdjuster {
  /** "On main, force-dial". */
  readonly named: string;
  readonly adjuster: Adjuster;
  readonly range: { readonly low: number; readonly high: number };
}

/** The adjuster that sets the force, of the panel that this leaf's drive is wired to, or else of the only panel. */
function adjusterFor(leaf: Leaf): ForceAdjuster | undefined {
  const { panels } = leaf.installation;
  const panel =
    panels.find((each) => each.wires.some(({ device }) => device?.kind === 'drive' && device.it.leaf === leaf)) ??
    (panels.length === 1 ? panels[0] : undefined);
  if (panel?.model === undefined) return undefined;
  for (const adjuster of panel.model.adjusters) {
    const range = adjuster.facts.range?.value;
    if (adjuster.facts.sets?.value === 'force' && range?.dimension === 'ratio')
      return { named: `On ${panel.name}, ${adjuster.name}`, adjuster, range };
  }
  return undefined;
}

/** "On main, force-dial about a quarter turn from the low stop"; undefined where there is no such adjuster. */
function settingInWords(leaf: Leaf, share: number): string | undefined {
  const found = adjusterFor(leaf);
  if (found === undefined) return undefined;
  const { named, adjuster, range } = found;
  if (share > range.high) return `${named} cannot be set so high`;
  if (share < range.low) return `${named} cannot be set so low`;
  const turn = positionOf(adjuster, range, share);
  return turn === undefined ? undefined : `${named} ${turnOf(adjuster, turn)}`;
}

const setting = (id: string, title: string, value: (window: SettingWindow) => number): FigureKind => ({
  id: `leaf.NAME.${id}`,
  title,
  unit: '1',
  topic: 'force',
  formula: 'push / the most that the drive can',
  source: limitSource,
  changedBy: 'all that changes the least and the most push',
  work: ({ leaves }, give) => {
    for (const leaf of leaves) {
      const window = forceWindowOf(leaf);
      if (window === undefined || window.low > window.high) continue;
      const push = value(window);
      const share = push / window.of.greatest;
      const words = settingInWords(leaf, share);
      give(
        leaf.name,
        share,
        mostPlace(leaf),
        () => [
          { name: 'push', value: push, unit: window.of.unit },
          {
            name: 'the most that the drive can',
            value: window.of.greatest,
            unit: window.of.unit,
            from: `drive-model ${window.of.drive.model?.name ?? ''}`,
          },
          {
            name: 'the least that it can be set to',
            value: window.of.lowestSetting,
            unit: window.of.unit,
            from: `drive-model ${window.of.drive.model?.name ?? ''}`,
          },
        ],
        words === undefined ? undefined : () => words,
      );
    }
  },
});

export const figures = onlyWhere(hasPush, [
  needed('N', 'force', 'push of ram or rack'),
  permitted('N', 'force', 'push of ram or rack'),
  needed('N·m', 'torque', 'torque of the shaft'),
  permitted('N·m', 'torque', 'torque of the shaft'),
  {
    id: 'leaf.NAME.force-window',
    title: 'The most push that the limits leave as a multiple of the least that moves the leaf; below 1 no setting works',
    unit: '1',
    topic: 'force',
    formula: 'most / least',
    source: limitSource,
    changedBy: 'all that changes the least and the most push',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const window = forceWindowOf(leaf);
        if (window === undefined || !(window.most.push < Infinity) || window.least.push <= 0) continue;
        const { least, most, of } = window;
        const word = of.unit === 'N' ? 'force' : 'torque';
        give(leaf.name, most.push / least.push, mostPlace(leaf), () => [
          { name: 'most', value: most.push, unit: of.unit, from: `leaf.${leaf.name}.${word}-most` },
          { name: 'least', value: least.push, unit: of.unit, from: `leaf.${leaf.name}.${word}-least` },
        ]);
      }
    },
  },
  {
    id: 'leaf.NAME.impact-bound',
    title: 'The hardest blow that the free edge could give a force gauge, nothing but the gauge’s spring giving way and the drive off',
    unit: 'N',
    topic: 'force',
    formula: 'F = √(2·k·E), k = 500 N/mm (from memory), E the greatest kinetic energy',
    source: { text: 'energy of a spring, any mechanics textbook; the stiffness of the gauge from memory', standing: 'from memory' },
    changedBy: 'speed most of all; an edge that gives makes it far less',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        if (forceWindowOf(leaf) === undefined) continue;
        const energy = energyOf(leaf);
        if (energy === undefined) continue;
        const peak = elasticPeak(energy, gaugeStiffness);
        if (peak === undefined) continue;
        give(leaf.name, peak, place(leaf), () => [
          { name: 'E, greatest kinetic energy', value: energy, unit: 'J', from: `leaf.${leaf.name}.kinetic-energy` },
          { name: 'k, stiffness of the gauge', value: gaugeStiffness, unit: 'N/m', from: 'from memory' },
        ]);
      }
    },
  },
  setting(
    'force-setting-least',
    'The lowest setting of the drive that moves the leaf everywhere, as a share of the most that it can',
    (window) => window.low,
  ),
  setting(
    'force-setting-most',
    'The highest setting of the drive that the limits leave, as a share of the most that it can',
    (window) => window.high,
  ),
]);

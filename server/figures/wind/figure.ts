import { factPlace, type Installation, type Leaf } from '../../model/index.ts';
import type { FigureUnit } from '../../vocabulary/index.ts';
import { type FigureKind, type Give, type Input, onlyWhere, type Source } from '../kind.ts';
import { beaufortInWords } from './beaufort.ts';
import { gripsOf, type LeafGrips, type SiteWind, siteWindOf } from './working.ts';

const windSource: Source = { text: 'EN 1991-1-4:2005+A1, 4.2 to 4.5', standing: 'published' };
const wallSource: Source = {
  text: 'EN 1991-1-4:2005+A1, 7.4.1 (Table 7.9) and 7.11; below 80 % infill its force coefficient of 1.6 is from memory',
  standing: 'published',
};

const leafInputs = (leaf: Leaf, { width, height, infill }: LeafGrips, wind: SiteWind, grip: number, unit: FigureUnit): Input[] => [
  { name: 'qp, peak pressure', value: wind.peakPressure, unit: 'Pa', from: 'site.wind-pressure' },
  { name: 'w, width', value: width, unit: 'm' },
  { name: 'h, height', value: height, unit: 'm' },
  { name: 'φ, infill', value: infill, unit: '1', ...(leaf.facts.infill === undefined ? { from: 'not stated, taken as full' } : {}) },
  {
    name: 'sum over the zones for each pascal',
    value: grip,
    unit,
    from: infill < 0.8 ? 'lattice: 1.6·φ (from memory) over the whole face' : 'Table 7.9',
  },
];

/** The work of a kind of figure that every leaf in the wind has; with `swings` only those that swing. */
const each =
  (swings: boolean, work: (leaf: Leaf, grips: LeafGrips, wind: SiteWind, give: Give) => void): FigureKind['work'] =>
  (installation, give) => {
    const wind = siteWindOf(installation);
    if (wind === undefined) return;
    for (const leaf of installation.leaves) {
      if (swings && leaf.facts.opens === undefined) continue;
      const grips = gripsOf(leaf);
      if (grips !== undefined) work(leaf, grips, wind, give);
    }
  };

const hasWind = ({ site }: Installation): boolean => site?.facts.wind !== undefined;

export const figures = onlyWhere(hasWind, [
  {
    id: 'site.wind-pressure',
    title: 'Peak wind pressure at the height of the gate',
    unit: 'Pa',
    topic: 'wind',
    formula:
      'qp = (1 + 7·Iv)·½·ρ·vm², with vm = kr·ln(z/z0)·vb, kr = 0.19·(z0/0.05)^0.07, Iv = 1/ln(z/z0), ρ = 1.25 kg/m³; vb times the probability factor of the return period',
    source: windSource,
    changedBy: 'the basic wind speed, the terrain, the height and the return period',
    work: (installation, give) => {
      const wind = siteWindOf(installation);
      if (wind === undefined) return;
      const { fact } = wind;
      give(
        '',
        wind.peakPressure,
        fact.line,
        () => [
          { name: 'vb, basic wind speed', value: fact.speed, unit: 'm/s' },
          { name: 'return period', value: fact.period, unit: 'years' },
          { name: 'probability factor', value: wind.factor, unit: '1' },
          { name: 'z, height', value: wind.height, unit: 'm' },
          { name: 'kr, terrain factor', value: wind.terrainFactor, unit: '1' },
          { name: 'cr, roughness factor', value: wind.roughnessFactor, unit: '1' },
          { name: 'vm, mean wind there', value: wind.mean, unit: 'm/s' },
          { name: 'Iv, turbulence', value: wind.turbulence, unit: '1' },
        ],
        () => `In open country this wind is ${beaufortInWords(wind.basic) ?? ''}`,
      );
    },
  },
  {
    id: 'leaf.NAME.wind-force',
    title: 'Force of the peak wind on the closed leaf, square to it',
    unit: 'N',
    topic: 'wind',
    formula: 'F = qp·Σ c·A over the zones of the leaf, from both ends of the closed gate; below 80 % infill c = 1.6·φ',
    source: wallSource,
    changedBy: 'the size of the leaf and its infill',
    work: each(false, (leaf, grips, wind, give) => {
      const { force } = grips.closed;
      give(leaf.name, wind.peakPressure * force, factPlace(leaf, leaf.facts.height), () => leafInputs(leaf, grips, wind, force, 'm²'));
    }),
  },
  {
    id: 'leaf.NAME.wind-moment',
    title: 'Greatest moment of the peak wind about the hinge over the travel, the wind square to the leaf',
    unit: 'N·m',
    topic: 'wind',
    formula: 'M = qp·Σ c·h·(x₂² − x₁²)/2 over the zones, x from the hinge; the greater of closed and moving, where both ends are free',
    source: wallSource,
    changedBy: 'width most of all, then infill and height',
    work: each(true, (leaf, grips, wind, give) => {
      const greatest = Math.max(grips.closed.moment, grips.moving.moment);
      give(leaf.name, wind.peakPressure * greatest, factPlace(leaf, leaf.facts.infill ?? leaf.facts.height), () =>
        leafInputs(leaf, grips, wind, greatest, 'm³'),
      );
    }),
  },
  {
    id: 'leaf.NAME.wind-moment-closed',
    title: 'Moment of the peak wind about the hinge while the gate is closed',
    unit: 'N·m',
    topic: 'wind',
    formula: 'M = qp·Σ c·h·(x₂² − x₁²)/2 over the zones from both ends of the closed gate, x from the hinge',
    source: wallSource,
    changedBy: 'width most of all, then infill, height and return corners',
    work: each(true, (leaf, grips, wind, give) => {
      const { moment } = grips.closed;
      give(
        leaf.name,
        wind.peakPressure * moment,
        factPlace(leaf, leaf.facts['return-corner'] ?? leaf.facts.infill ?? leaf.facts.height),
        () => leafInputs(leaf, grips, wind, moment, 'm³'),
      );
    }),
  },
]);

import { factPlace, type Leaf, perSubject } from '../../model/index.ts';
import { inDegrees, type FigureKind, type Input, type Source } from '../figure.ts';
import { rollingShare } from '../force-window/case.ts';
import { gravity, risingHingeMoment, tiltedHingeMoment, tiltedHingeRise } from './maths.ts';

/** What gravity does to a released leaf: N·m about the hinge of a swing leaf, N along the track of a sliding one. */
export interface Released {
  readonly swing: boolean;
  /** Greatest pull towards closed and towards open over the travel, before friction; 0 where there is none. */
  readonly towardsClosed: number;
  readonly towardsOpen: number;
  /** Positions of both, radians or metres. */
  readonly closedAt: number;
  readonly openAt: number;
  /** What holds the leaf, in the same unit, and whether it is stated or taken from memory. */
  readonly friction: number;
  readonly frictionStated: boolean;
  /** How much higher the centre of the leaf stands at its highest than at its lowest, metres. */
  readonly rise: number;
}

/** Places over the travel that are looked at. */
const samples = 24;

/** Undefined for a leaf that nothing pulls: its hinges neither lean nor rise, its track does not slope. */
export const releasedOf = perSubject((leaf: Leaf): Released | undefined => {
  const { opens, slides, width, mass, slope, rises, friction, 'hinge-tilt': tilt } = leaf.facts;
  if (mass === undefined) return undefined;
  if (slides !== undefined) {
    if (slope === undefined || slope.value === 0) return undefined;
    const angle = Math.atan(slope.value);
    const pull = mass.value * gravity * Math.sin(angle);
    return {
      swing: false,
      towardsClosed: Math.max(0, pull),
      towardsOpen: Math.max(0, -pull),
      closedAt: slides.distance,
      openAt: 0,
      friction: friction?.value ?? mass.value * gravity * rollingShare * Math.cos(angle),
      frictionStated: friction !== undefined,
      rise: Math.abs(slides.distance * Math.sin(angle)),
    };
  }
  if (opens === undefined || width === undefined || (tilt === undefined && rises === undefined)) return undefined;
  const climb = risingHingeMoment(mass.value, rises?.value ?? 0, opens.angle) ?? 0;
  const beta = tilt?.value ?? 0;
  const lowest = tilt?.lowest === 'open' ? opens.angle : 0;
  let towardsClosed = 0;
  let towardsOpen = 0;
  let closedAt = 0;
  let openAt = 0;
  let highest = -Infinity;
  let deepest = Infinity;
  for (let i = 0; i <= samples; i++) {
    const at = (opens.angle * i) / samples;
    const pull = climb + (tiltedHingeMoment(mass.value, width.value, beta, at - lowest) ?? 0);
    if (pull > towardsClosed) {
      towardsClosed = pull;
      closedAt = at;
    }
    if (-pull > towardsOpen) {
      towardsOpen = -pull;
      openAt = at;
    }
    const height = ((rises?.value ?? 0) * at) / opens.angle + (tiltedHingeRise(width.value, beta, at - lowest) ?? 0);
    highest = Math.max(highest, height);
    deepest = Math.min(deepest, height);
  }
  return { swing: true, towardsClosed, towardsOpen, closedAt, openAt, friction: (friction?.value ?? 0) * width.value, frictionStated: friction !== undefined, rise: highest - deepest };
});

function inputsOf(leaf: Leaf): Input[] {
  const { opens, width, mass, rises, 'hinge-tilt': tilt } = leaf.facts;
  return [
    { name: 'm, mass', value: mass?.value ?? 0, unit: 'kg' },
    { name: 'w, width', value: width?.value ?? 0, unit: 'm' },
    { name: 'Θ, opening angle', value: inDegrees(opens?.angle ?? 0), unit: 'deg' },
    ...(tilt === undefined ? [] : [{ name: `β, lean of the hinge axis, lowest ${tilt.lowest}`, value: inDegrees(tilt.value), unit: 'deg' }]),
    ...(rises === undefined ? [] : [{ name: 'h, rise of the hinges', value: rises.value, unit: 'm' }]),
  ];
}

const statics: Source = { text: 'statics, any mechanics textbook; standard gravity 9.80665 m/s²', standing: 'derived' };

export const figures: readonly FigureKind[] = [
  {
    id: 'leaf.NAME.hinge-moment',
    title: 'Greatest moment with which leaning or rising hinges pull the leaf; above 0 towards closed, below 0 towards open',
    unit: 'N·m',
    topic: 'force',
    formula: 'm·g·h/Θ + m·g·(w/2)·sin β·sin θ, θ from where the leaf hangs lowest; the greatest over the travel',
    source: statics,
    changedBy: 'the lean or rise of the hinges, mass and width',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const released = releasedOf(leaf);
        if (released === undefined || !released.swing) continue;
        const closing = released.towardsClosed >= released.towardsOpen;
        give(leaf.name, closing ? released.towardsClosed : -released.towardsOpen, factPlace(leaf, leaf.facts['hinge-tilt'] ?? leaf.facts.rises), () => [
          ...inputsOf(leaf),
          { name: 'at an opening of', value: inDegrees(closing ? released.closedAt : released.openAt), unit: 'deg' },
        ]);
      }
    },
  },
  {
    id: 'leaf.NAME.hinge-rise',
    title: 'How far leaning or rising hinges lift the centre of the leaf over the travel',
    unit: 'm',
    topic: 'force',
    formula: 'h·θ/Θ + (w/2)·sin β·(1 − cos θ), θ from where the leaf hangs lowest; highest less lowest',
    source: statics,
    changedBy: 'the lean or rise of the hinges, and the width',
    work: ({ leaves }, give) => {
      for (const leaf of leaves) {
        const released = releasedOf(leaf);
        if (released !== undefined && released.swing) give(leaf.name, released.rise, factPlace(leaf, leaf.facts['hinge-tilt'] ?? leaf.facts.rises), () => inputsOf(leaf));
      }
    },
  },
];

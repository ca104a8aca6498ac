// Moment of inertia of a swing leaf about its hinge axis. Height plays no part.
//
// SI throughout: kg, m, kg·m². Anything impossible gives undefined. Source: any mechanics textbook, such as
// Serway and Jewett, *Physics for Scientists and Engineers*, chapter 10.

const amount = (value: number): boolean => Number.isFinite(value) && value >= 0;
const above = (value: number): boolean => Number.isFinite(value) && value > 0;

/** Inertia in kg·m² of a leaf of even mass (kg, above 0) and width (m, above 0) about its hinged edge: m·w²/3. */
export function uniformLeafInertia(mass: number, width: number): number | undefined {
  return above(mass) && above(width) ? (mass * width * width) / 3 : undefined;
}

/**
 * Inertia in kg·m² about an axis `offset` metres away from, and parallel to, the one through the centre of mass, from the
 * inertia about that one (kg·m², 0 or above) and the mass (kg, above 0): I + m·d². The sign of the offset does not matter.
 */
export function parallelAxis(inertiaAboutCentre: number, mass: number, offset: number): number | undefined {
  return amount(inertiaAboutCentre) && above(mass) && Number.isFinite(offset) ? inertiaAboutCentre + mass * offset * offset : undefined;
}

/** The parts of a framed leaf; masses in kg, each 0 or above and together above 0, width in m. */
export interface FramedLeaf {
  readonly width: number;
  /** All rails together: they run the whole width. */
  readonly rails: number;
  /** On the hinge axis, so it counts for nothing but its mass. */
  readonly hingeStile: number;
  /** At the full width. */
  readonly freeStile: number;
  /** Spread evenly over the whole width. */
  readonly infill: number;
}

/**
 * Inertia in kg·m² of a framed leaf about its hinge axis: (rails + infill)·w²/3 + free stile·w². The stiles count as thin;
 * with most of the weight in the frame the free stile makes this more than an even leaf of the same mass would have.
 */
export function framedLeafInertia(leaf: FramedLeaf): number | undefined {
  const { width, rails, hingeStile, freeStile, infill } = leaf;
  if (!above(width) || !amount(rails) || !amount(hingeStile) || !amount(freeStile) || !amount(infill)) return undefined;
  if (!above(rails + hingeStile + freeStile + infill)) return undefined;
  return width * width * ((rails + infill) / 3 + freeStile);
}

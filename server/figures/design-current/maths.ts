// What a motor draws from a single-phase supply.

/**
 * Current in A of a motor with a rated output of `output` W, its efficiency and power factor as shares, at `voltage` V:
 * Ib = P/(η·cos φ·U). Undefined where one of them is not above 0. Source: any textbook of electrical machines (definition of
 * efficiency and power factor).
 */
export function designCurrent(output: number, efficiency: number, factor: number, voltage: number): number | undefined {
  const current = output / (efficiency * factor * voltage);
  return current > 0 && Number.isFinite(current) ? current : undefined;
}

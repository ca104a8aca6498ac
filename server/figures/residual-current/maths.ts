// An earth electrode and a residual-current device.

/** Voltage that may stay on metal that people touch, V. Source: BS 7671, 411.5.3. */
export const touchLimit = 50;
/** Above this an electrode may not be stable, ohm. Source: BS 7671, Table 41.5, note. */
export const unstableFrom = 200;

/** Greatest resistance in ohm of the electrode for a device of `residual` A: RA ≤ 50 V/IΔn. Source: BS 7671, 411.5.3 and Table 41.5. */
export function electrodeLimit(residual: number): number {
  return touchLimit / residual;
}

/** Voltage in V on earthed metal at the current at which the device trips: RA·IΔn. Source: BS 7671, 411.5.3. */
export function touchVoltage(electrode: number, residual: number): number {
  return electrode * residual;
}

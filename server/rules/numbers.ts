// Numbers as messages show them: three significant digits, trailing zeros gone.

/** 17.94 → "17.9", 0.2 → "0.2", 1250 → "1250". */
export function shown(value: number): string {
  const digits = Math.abs(value) >= 1000 ? 4 : 3;
  return String(Number(value.toPrecision(digits)));
}

export const seconds = (value: number): string => `${shown(value)} s`;
/** Rounded up at the second decimal, so that what is asked for is never less than what is needed. */
export const secondsAtLeast = (value: number): string => `${Math.ceil(value * 100 - 1e-9) / 100} s`;
export const millimetres = (metres: number): string => `${shown(metres * 1000)} mm`;
export const degrees = (radians: number): string => `${shown((radians * 180) / Math.PI)}°`;

// Dates as the language writes them, YYYY-MM-DD, without a clock: the day is always handed in.

/** Days since 1970-01-01 in the Gregorian calendar; undefined for what is no date. */
export function dayNumber(text: string): number | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return undefined;
  // Years are counted from March, so that the leap day is the last of its year.
  const y = month <= 2 ? year - 1 : year;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  return y * 365 + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + dayOfYear - 719468;
}

/** Days from one date to another; negative where the second is earlier. Undefined where either is no date. */
export function daysBetween(from: string, to: string): number | undefined {
  const [first, second] = [dayNumber(from), dayNumber(to)];
  return first === undefined || second === undefined ? undefined : second - first;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

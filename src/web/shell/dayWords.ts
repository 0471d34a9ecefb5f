/** A day as a letter writes it: `25 November 2026`. Takes a day or a moment; the moment's own day is meant. */
export function dayWords(day: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(day);
  if (found === null) return day;
  const month = months[Number(found[2]) - 1];
  return month === undefined ? day : `${Number(found[3])} ${month} ${found[1]}`;
}

/** The time of day of a moment, as its own device's clock showed it: `10:15`. */
export function clockWords(moment: string): string {
  return /T(\d{2}:\d{2})/.exec(moment)?.[1] ?? '';
}

/** The day today on this device: `2026-11-25`. */
export function today(now = new Date()): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** A day as a letter writes it: `25 November 2026`. Takes a day or a moment, whose own day is meant; anything else stands as it is. */
export function dayWords(day: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(day);
  const month = months[Number(found?.[2]) - 1];
  return found === null || month === undefined ? day : `${Number(found[3])} ${month} ${found[1]}`;
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

/** A moment as this device's clock shows it: `2026-11-25 10:15`. */
export function momentWords(milliseconds: number): string {
  const moment = new Date(milliseconds);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())} ${two(moment.getHours())}:${two(moment.getMinutes())}`;
}

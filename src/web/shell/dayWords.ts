/** The time of day of a moment, as its own device's clock showed it: `10:15`. */
export function clockWords(moment: string): string {
  return /T(\d{2}:\d{2})/.exec(moment)?.[1] ?? '';
}

/** The day today on this device: `2026-11-25`. */
export function today(now = new Date()): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

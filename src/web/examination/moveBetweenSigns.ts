/**
 * Which sign an arrow key goes to from the one that has the focus; undefined for any other key or at an end.
 *
 * @param count  how many signs are listed
 * @param at     which of them holds the focus, −1 for none
 */
export function moveBetweenSigns(key: string, at: number, count: number): number | undefined {
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: count - 1 }[key];
  return to === undefined || to < 0 || to >= count ? undefined : to;
}

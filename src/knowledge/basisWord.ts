/** What a figure stands on where no work is named, as a person reads it; the files keep their own spelling of it. */
export function basisWord(by: string | undefined): string {
  return by === 'judgement' ? 'judgment' : (by ?? '');
}

/** Words of ids that were fixed in British spelling, as they are shown. */
const shown: Readonly<Record<string, string>> = {
  ageing: 'aging',
  bevelled: 'beveled',
  centre: 'center',
  centred: 'centered',
  colour: 'color',
  dowelled: 'doweled',
  grey: 'gray',
  moulding: 'molding',
  mouldings: 'moldings',
  panelled: 'paneled',
  towards: 'toward',
};

/** An id as words, where it has no name of its own: `base-moulding` reads “base molding”. Ids themselves never change. */
export function idWords(id: string): string {
  return id
    .split('-')
    .map((word) => shown[word] ?? word)
    .join(' ');
}

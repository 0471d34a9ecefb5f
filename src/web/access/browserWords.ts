/** What a browser says of itself, as a person would say it. It may say what it likes. */
export function browserWords(agent: string): string {
  const browser = [
    ['Edge', /Edg\//],
    ['Firefox', /Firefox\/|FxiOS\//],
    ['Chrome', /Chrom(e|ium)\/|CriOS\//],
    ['Safari', /Safari\//],
  ].find(([, sign]) => (sign as RegExp).test(agent))?.[0];
  const system = [
    ['iPad', /iPad/],
    ['iPhone', /iPhone/],
    ['Android', /Android/],
    ['Windows', /Windows/],
    ['a Mac', /Macintosh/],
    ['Linux', /Linux/],
  ].find(([, sign]) => (sign as RegExp).test(agent))?.[0];
  return `${browser ?? 'A browser'}${system === undefined ? '' : ` on ${system}`}`;
}

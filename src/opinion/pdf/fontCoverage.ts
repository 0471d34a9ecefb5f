/**
 * Which code points a TrueType face has a glyph for.
 *
 * Reads the character map's format 4 (16 bits) and format 12 (32 bits) subtables; faces with neither cover nothing.
 *
 * @param font  the bytes of the face
 * @source OpenType specification, "cmap": formats 4 and 12; from memory, checked against the signs the faces print
 */
export function fontCoverage(font: Buffer): (codePoint: number) => boolean {
  const cmap = tableAt(font, 'cmap');
  if (cmap === undefined) return () => false;
  const ranges: [number, number][] = [];
  for (let index = 0; index < font.readUInt16BE(cmap + 2); index++) {
    const at = cmap + font.readUInt32BE(cmap + 4 + index * 8 + 4);
    const format = font.readUInt16BE(at);
    if (format === 12) ranges.push(...groupsOf12(font, at));
    else if (format === 4) ranges.push(...segmentsOf4(font, at));
  }
  return (codePoint) => ranges.some(([from, to]) => codePoint >= from && codePoint <= to);
}

function tableAt(font: Buffer, tag: string): number | undefined {
  for (let index = 0; index < font.readUInt16BE(4); index++) {
    const entry = 12 + index * 16;
    if (font.toString('latin1', entry, entry + 4) === tag) return font.readUInt32BE(entry + 8);
  }
  return undefined;
}

function groupsOf12(font: Buffer, at: number): [number, number][] {
  return Array.from({ length: font.readUInt32BE(at + 12) }, (_, index) => {
    const group = at + 16 + index * 12;
    return [font.readUInt32BE(group), font.readUInt32BE(group + 4)];
  });
}

/** Segments map whole runs; a run's single gaps are told by the glyph index, where it is indirect. */
function segmentsOf4(font: Buffer, at: number): [number, number][] {
  const segments = font.readUInt16BE(at + 6) / 2;
  const [ends, starts] = [at + 14, at + 16 + segments * 2];
  const [deltas, offsets] = [starts + segments * 2, starts + segments * 4];
  const ranges: [number, number][] = [];
  for (let index = 0; index < segments; index++) {
    const [from, to] = [font.readUInt16BE(starts + index * 2), font.readUInt16BE(ends + index * 2)];
    const offset = font.readUInt16BE(offsets + index * 2);
    const delta = font.readUInt16BE(deltas + index * 2);
    for (let code = from; code <= to && code < 0xffff; code++) {
      const place = offsets + index * 2 + offset + (code - from) * 2;
      const glyph = offset === 0 ? (code + delta) & 0xffff : font.readUInt16BE(place);
      if (glyph !== 0) ranges.push([code, code]);
    }
  }
  return ranges;
}

import type { FormPart, Knowledge } from '../knowledge/schema.ts';
import type { MeasuredFinding } from './measuredFinding.ts';

/** Where findings can be entered: the sign on the whole piece, and on every part that can show it. */
export function placesOf<Finding extends Pick<MeasuredFinding, 'sign'>>(
  findings: readonly Finding[],
  signs: Knowledge['signs'],
  parts: readonly Pick<FormPart, 'id' | 'kind'>[],
): { finding: Finding; part: string | undefined }[] {
  return findings.flatMap((finding) => {
    const sign = signs[finding.sign];
    if (sign === undefined) return [];
    const { on } = sign;
    return [
      ...(on.includes('whole') ? [{ finding, part: undefined }] : []),
      ...parts.filter(({ kind }) => on.includes(kind)).map(({ id }) => ({ finding, part: id })),
    ];
  });
}

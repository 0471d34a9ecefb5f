import type { Form, FormPart, Knowledge } from '../knowledge/schema.ts';
import type { MeasuredFinding } from './measuredFinding.ts';

/**
 * Where findings can be entered on a piece of a form: the sign on the whole piece, and on every part that can show it. A trace of an
 * alteration that the form can’t have had has no place.
 */
export function placesOf<Finding extends Pick<MeasuredFinding, 'sign'>>(
  findings: readonly Finding[],
  signs: Knowledge['signs'],
  { alterations }: Pick<Form, 'alterations'>,
  parts: readonly Pick<FormPart, 'id' | 'kind'>[],
): { finding: Finding; part: string | undefined }[] {
  return findings.flatMap((finding) => {
    const sign = signs[finding.sign];
    const alteration = /^alteration\/(.+)$/.exec(sign?.hangsOn ?? '')?.[1];
    if (sign === undefined || (alteration !== undefined && !alterations.includes(alteration))) return [];
    const { on } = sign;
    return [
      ...(on.includes('whole') ? [{ finding, part: undefined }] : []),
      ...parts.filter(({ kind }) => on.includes(kind)).map(({ id }) => ({ finding, part: id })),
    ];
  });
}

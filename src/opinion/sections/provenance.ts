import { provenanceCheck } from '../../calculations/provenanceCheck.ts';
import { runCalculation } from '../../calculations/runCalculation.ts';
import { askedChain, ownersOf } from '../../provenance/ownersOf.ts';
import type { Block, Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { stopped } from '../wording.ts';

/** Who had the piece, as the trade prints it, with what is open in it; nothing where nobody was entered. */
export function provenanceSection(material: OpinionMaterial): Section | undefined {
  const { piece, knowledge, weighing, madeOn } = material;
  const owners = ownersOf(piece);
  if (owners.length === 0) return undefined;
  const asked = askedChain(owners, weighing?.years.p90);
  const checked = runCalculation(provenanceCheck, asked, { knowledge, yearNow: Number(madeOn.slice(0, 4)) });
  if (!checked.ok) return undefined;
  const { parts, order, impossible, overlaps, gaps } = checked.output;
  const notes = parts.notes.map((note, index) => {
    const plates = (piece.owners[owners[order[index] ?? 0]?.id ?? '']?.photos ?? []).flatMap(
      (id) => material.plateNumber(id) ?? [],
    );
    return `Note ${index + 1}: ${stopped(note)}${plates.length === 0 ? '' : ` Plate ${plates.join(', ')}.`}`;
  });
  return {
    id: 'provenance',
    title: 'Provenance',
    blocks: [
      { kind: 'paragraph', words: parts.text },
      { kind: 'list', items: notes },
      ...told('Does not agree', [...impossible, ...overlaps]),
      ...told('Open', gaps),
      { kind: 'paragraph', as: 'note', words: `How it is written: ${parts.key}` },
    ],
  };
}

function told(heading: string, found: readonly { words: string }[]): Block[] {
  if (found.length === 0) return [];
  return [
    { kind: 'heading', words: heading },
    { kind: 'list', items: found.map(({ words }) => words) },
  ];
}

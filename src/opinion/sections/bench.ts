import { findCalculation } from '../../calculations/registry.ts';
import { capital } from '../../ground/words.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { stopped } from '../wording.ts';

/** What was measured and compared at the bench, with the method and source of each; nothing where nothing was. */
export function benchSection(material: OpinionMaterial): Section | undefined {
  const { piece, partName, signName } = material;
  const entered = Object.values(piece.findings).flatMap(({ sign, part, measured }) =>
    measured === undefined
      ? []
      : [
          {
            title: `${capital(partName(part ?? 'whole'))}: ${signName(sign)}`,
            note: 'Entered as a finding, weighed by what was measured.',
            calculation: measured.calculation,
            says: measured.says,
          },
        ],
  );
  const kept = Object.values(piece.bench).map(({ title, calculation, says }) => ({
    title: capital(title),
    note: 'Kept for the record; not weighed.',
    calculation,
    says,
  }));
  // A result kept under its own title and entered besides is told once, as the finding.
  const told = [
    ...entered,
    ...kept.filter(
      (one) => !entered.some((each) => each.says === one.says && each.calculation === one.calculation),
    ),
  ];
  if (told.length === 0) return undefined;
  const used = [...new Set(told.map((each) => each.calculation))].sort();
  return {
    id: 'bench',
    title: 'Measured at the bench',
    appendix: true,
    blocks: [
      {
        kind: 'table',
        caption: 'What was measured or compared, and what it says',
        columns: [
          { name: 'What', share: 3 },
          { name: 'Result', share: 6 },
        ],
        groups: [
          {
            rows: told.map((each): Words[] => [
              each.title,
              `${stopped(each.says)} ${each.note} (${each.calculation})`,
            ]),
          },
        ],
      },
      ...(entered.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              as: 'note',
              words:
                'A measurement speaks of the part it was taken on: of its age, its tool, or whether it belongs. What it weighs for the piece stands under “What speaks for and against” and is mostly less, for a later piece can have aged too and an old one can have had a part renewed.',
            } satisfies Block,
          ]),
      {
        kind: 'list',
        items: used.flatMap((id): Words[] => {
          const calculation = findCalculation(id);
          return calculation === undefined
            ? []
            : [[{ strong: id }, `: ${calculation.answers} ${stopped(calculation.source)}`]];
        }),
      },
    ],
  };
}

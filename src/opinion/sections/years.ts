import { capital, listed } from '../../ground/words.ts';
import { formatYears } from '../../units/years.ts';
import { outOf, probableWords, toldShares } from '../../weighing/probabilityWords.ts';
import type { Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { yearCurve } from '../yearCurve.ts';

/** When it was made, by the findings, with the curve; beside the years the examiner concludes on. */
export function yearsSection(material: OpinionMaterial): Section | undefined {
  const { weighing, piece } = material;
  if (weighing === undefined) return undefined;
  const { p50, p90, density, binding } = weighing.years;
  const whole = ([from, to]: readonly [number, number]) => formatYears([Math.round(from), Math.round(to)]);
  const ends = (end: 'from' | 'to') =>
    listed(
      binding
        .filter((each) => each.end === end)
        .map((each) => `“${material.signName(each.sign)}” (${material.partName(each.part)})`),
    );
  const rows = [
    { name: capital(probableWords(toldShares.most)), words: [whole(p90)] },
    { name: capital(probableWords(toldShares.half)), words: [whole(p50)] },
    { name: 'Not earlier, by', words: [ends('from')] },
    { name: 'Not later, by', words: [ends('to')] },
    {
      name: 'The examiner',
      words: [piece.opinion.years === undefined ? '' : formatYears(piece.opinion.years)],
    },
  ].filter(({ words }) => words[0] !== '');
  return {
    id: 'years',
    title: 'Years',
    appendix: true,
    blocks: [
      { kind: 'facts', rows },
      {
        kind: 'pictures',
        pictures: [yearCurve({ density, p50, p90, examiner: piece.opinion.years })],
      },
      {
        kind: 'paragraph',
        as: 'note',
        words: capital(
          `the shortest spans that hold ${outOf(toldShares.most)} and ${outOf(toldShares.half)} of the probability, in bins of five years; they hold for the making of the main body, over all readings taken together, from the starting odds told under “The readings”.`,
        ),
      },
    ],
  };
}

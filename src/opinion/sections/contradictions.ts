import { findingKey } from '../../piece/finding.ts';
import { contradictionBelowWords } from '../../weighing/contradictionBelow.ts';
import { outOf } from '../../weighing/probabilityWords.ts';
import { turnedByShop } from '../../weighing/turnedByShop.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs } from '../wording.ts';

/** The findings that the leading reading does not explain by itself, what would explain each, and how the examiner settled it. */
export function contradictionsSection(material: OpinionMaterial): Section | undefined {
  const { weighing, piece } = material;
  if (weighing === undefined) return undefined;
  const { resolutions } = piece.opinion;
  const keys = weighing.contradictions.map((each) => findingKey(each.sign, each.part ?? undefined));
  const earlier = Object.entries(resolutions).filter(
    ([key, text]) => !keys.includes(key) && text.trim() !== '',
  );
  return {
    id: 'contradictions',
    title: 'Contradictions, and how they were resolved',
    appendix: true,
    blocks: [
      ...(weighing.contradictions.length === 0
        ? [
            {
              kind: 'paragraph',
              words: `No finding is ${contradictionBelowWords()} under the reading that the findings lead to.`,
            } satisfies Block,
          ]
        : []),
      ...weighing.contradictions.flatMap((jar, index) => [
        {
          kind: 'heading',
          words: nameOf(keys[index] ?? '', material),
        } satisfies Block,
        { kind: 'paragraph', words: jar.question } satisfies Block,
        ...(jar.explanations.length === 0
          ? [
              {
                kind: 'paragraph',
                as: 'note',
                words: 'Nothing in the knowledge files would explain it.',
              } satisfies Block,
            ]
          : [
              {
                kind: 'list',
                items: jar.explanations.map(
                  (way) => `${way.words} Then, all else as found, ${outOf(way.share)} would show it.`,
                ),
              } satisfies Block,
            ]),
        ...turned(weighing, jar),
        settled(resolutions[keys[index] ?? '']),
      ]),
      ...(earlier.length === 0
        ? []
        : [{ kind: 'heading', words: 'Also settled by the examiner' } satisfies Block]),
      ...(earlier.length === 0
        ? []
        : [
            {
              kind: 'list',
              items: earlier.map(
                ([key, text]): Words => [{ em: `${nameOf(key, material)}. ` }, paragraphs(text).join(' ')],
              ),
            } satisfies Block,
          ]),
    ],
  };
}

/** For a habit that a shop's file explains: what it would weigh without the file, and what it weighs with it. */
function turned(weighing: Weighing, jar: Weighing['contradictions'][number]): Block[] {
  const weight = weighing.weights.find((each) => each.sign === jar.sign && each.part === jar.part);
  const words = weight === undefined ? undefined : turnedByShop(weight);
  return words === undefined ? [] : [{ kind: 'paragraph', words }];
}

function settled(text: string | undefined): Block {
  const words = paragraphs(text ?? '').join(' ');
  return words === ''
    ? { kind: 'paragraph', as: 'own', words: [{ strong: 'Left open by the examiner.' }] }
    : { kind: 'paragraph', as: 'own', words: [{ strong: 'Settled by the examiner: ' }, words] };
}

function nameOf(key: string, { signName, partName }: OpinionMaterial): string {
  const at = key.indexOf('@');
  return at < 0 ? signName(key) : `${signName(key.slice(0, at))}, ${partName(key.slice(at + 1))}`;
}

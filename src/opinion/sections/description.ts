import { capital, counted, listed } from '../../ground/words.ts';
import { idWords } from '../../knowledge/idWords.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { told } from '../../units/doubt.ts';
import { formatInches, formatMm } from '../../units/length.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs, stopped } from '../wording.ts';

/** What the piece is made as and of, and how large it is, in inches and millimetres. */
export function descriptionSection(material: OpinionMaterial): Section {
  return {
    id: 'description',
    title: 'Description',
    blocks: [...formBlocks(material), ...partBlocks(material), ...sizeBlocks(material)],
  };
}

function formBlocks({ piece, form }: OpinionMaterial): Block[] {
  if (form === undefined)
    return [
      {
        kind: 'paragraph',
        as: 'note',
        words: `The knowledge files have no form “${piece.form}”, so its parts can’t be named or drawn here.`,
      },
    ];
  const chosen = form.features.flatMap((feature) => {
    const option = feature.options.find((each) => each.id === piece.features[feature.id]);
    return option === undefined ? [] : [`${inSentence(feature.name)}: ${inSentence(option.name)}`];
  });
  const choice = chosen.length === 0 ? '' : ` ${capital(chosen.join('; '))}.`;
  return [{ kind: 'paragraph', words: `${capital(form.name)}. ${form.what}${choice}` }];
}

function partBlocks({ piece, parts, partName }: OpinionMaterial): Block[] {
  const order = new Map(parts.map((part, index) => [part.id, index]));
  const told = Object.values(piece.parts).toSorted(
    (a, b) => (order.get(a.id) ?? parts.length) - (order.get(b.id) ?? parts.length),
  );
  const missing = told.filter((part) => part.missing).map((part) => partName(part.id));
  const woods = new Map<string, string[]>();
  for (const part of told)
    for (const wood of part.woods) woods.set(wood, [...(woods.get(wood) ?? []), partName(part.id)]);
  const rows: { name: string; words: Words[] }[] = [...woods].map(([wood, where]) => ({
    name: capital(idWords(wood)),
    words: [listed(where)],
  }));
  const words = told.flatMap((part) =>
    paragraphs(part.words).map((text): Words => [{ em: `${capital(partName(part.id))}. ` }, text]),
  );
  return [
    ...(rows.length === 0 ? [] : [{ kind: 'heading', words: 'Woods, as named by the examiner' } as const]),
    ...(rows.length === 0 ? [] : [{ kind: 'facts', rows } as const]),
    ...(words.length === 0 ? [] : [{ kind: 'heading', words: 'Of single parts' } as const]),
    ...(words.length === 0 ? [] : [{ kind: 'list', items: words } as const]),
    ...(missing.length === 0 ? [] : [{ kind: 'paragraph', words: `Missing: ${listed(missing)}.` } as const]),
  ];
}

function sizeBlocks({ piece, form }: OpinionMaterial): Block[] {
  const order = new Map(form?.measures.map((measure, index) => [measure.id, index]));
  const measured = Object.values(piece.measures).toSorted(
    (a, b) => (order.get(a.id) ?? order.size) - (order.get(b.id) ?? order.size),
  );
  if (measured.length === 0)
    return [
      {
        kind: 'paragraph',
        as: 'note',
        words:
          piece.mode === 'in-hand'
            ? 'No dimensions have been entered.'
            : 'No dimensions have been entered; none can be taken safely from photographs without a scale.',
      },
    ];
  const rows = measured.map((measure): Words[] => {
    const known = form?.measures.find((each) => each.id === measure.id);
    const doubt =
      measure.sigmaMm === undefined || measure.sigmaMm === 0 ? '' : ` ± ${formatMm(told(measure.sigmaMm))}`;
    return [
      capital(known?.name ?? idWords(measure.id)),
      `${formatInches(measure.mm)} in`,
      `${formatMm(measure.mm)}${doubt}`,
      [measure.words.trim(), '']
        .filter((each) => each !== '')
        .map(stopped)
        .join(' ') ||
        (known?.how ?? ''),
    ];
  });
  return [
    {
      kind: 'table',
      caption: `Dimensions: ${counted(measured.length, 'measure')}, inches to the nearest sixteenth`,
      columns: [
        { name: 'Measure', share: 3 },
        { name: 'Inches', share: 1.6, end: true },
        { name: 'Millimeters', share: 1.8, end: true },
        { name: 'How taken', share: 5 },
      ],
      groups: [{ rows }],
    },
  ];
}

import { capital, counted } from '../../ground/words.ts';
import type { Photo } from '../../piece/photo.ts';
import { dayWords } from '../../units/days.ts';
import type { Plate, Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs, stopped } from '../wording.ts';

/** The photos, numbered, with their marks and captions. */
export function platesSection(material: OpinionMaterial): Section {
  const { piece } = material;
  const left = Object.values(piece.photos).length - material.plates.length;
  const plates = material.plates.map(({ photo, plate }) => plateOf(photo, plate, material));
  return {
    id: 'plates',
    title: 'Plates',
    appendix: true,
    apart: plates.length > 0,
    blocks: [
      ...(plates.length === 0
        ? [{ kind: 'paragraph', as: 'note', words: 'No photographs are printed with this opinion.' } as const]
        : []),
      ...plates.map((plate) => ({ kind: 'plate', plate }) as const),
      ...(left > 0
        ? [
            {
              kind: 'paragraph',
              as: 'note',
              words: `${capital(counted(left, 'further photograph'))} ${left === 1 ? 'is' : 'are'} kept with the record and not printed.`,
            } as const,
          ]
        : []),
    ],
  };
}

/** A photo as it is printed: its words, what its marks show, and where it comes from. */
export function plateOf(photo: Photo, number: number, material: OpinionMaterial): Plate {
  const caption = stopped(paragraphs(photo.caption).join(' '));
  const of =
    photo.part === undefined ? 'the piece' : `the ${material.partName(photo.part)}`.replace('the the', 'the');
  return {
    number,
    photoId: photo.id,
    sha256: photo.sha256,
    mediaType: photo.mediaType,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    caption: caption === '' ? capital(`${of}.`) : caption,
    alternative: paragraphs(photo.alternative).join(' ') || alternativeFor(photo, of, caption),
    origin: originOf(photo),
    marks: photo.marks
      .toSorted((a, b) => a.number - b.number)
      .map((mark) => ({
        number: mark.number,
        kind: mark.kind,
        points: mark.points,
        says: markWords(mark, material),
      })),
  };
}

/** What stands in for a description that nobody wrote: what the record knows the picture to show. */
function alternativeFor(photo: Photo, of: string, caption: string): string {
  const marks =
    photo.marks.length === 0
      ? ''
      : ` ${capital(counted(photo.marks.length, 'mark'))} on it, told with the plate.`;
  return `Photograph of ${of}; the examiner did not describe it further.${caption === '' ? '' : ` Caption: ${caption}`}${marks}`;
}

/** A mark can show where a sign was looked for and was not. */
const seenWords = {
  present: '',
  absent: ': looked for and not there',
  'could-not-tell': ': could not tell',
  'does-not-apply': ': does not apply',
} as const;

function markWords(mark: Photo['marks'][number], { piece, signName, partName }: OpinionMaterial): string {
  const finding = mark.finding === undefined ? undefined : piece.findings[mark.finding];
  const words = paragraphs(mark.words).join(' ');
  if (words !== '') return stopped(words);
  if (finding === undefined) return 'marked without words.';
  return `${signName(finding.sign)}, ${partName(finding.part)}${seenWords[finding.state]}.`;
}

function originOf(photo: Photo): string {
  const time = /T(\d{2}:\d{2})/.exec(photo.takenAt ?? '')?.[1];
  const taken =
    photo.takenAt === undefined
      ? ''
      : `Taken ${dayWords(photo.takenAt)}${time === undefined ? '' : ` at ${time} by the camera’s clock`}`;
  return [taken, (photo.camera ?? '').trim()].filter((each) => each !== '').join(', ');
}

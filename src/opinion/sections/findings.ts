import { capital, counted, listed } from '../../ground/words.ts';
import { type Finding, findingKey, tellsOfPiece } from '../../piece/finding.ts';
import { hasEvidence } from '../../piece/hasEvidence.ts';
import { expectedInWords } from '../../piece/observationWords.ts';
import type { Photo, PhotoMark } from '../../piece/photo.ts';
import { lookedOverId } from '../../weighing/weighObservations.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { stateWords, stopped, surenessWords } from '../wording.ts';

/** What was looked for, part by part: present, absent where it was looked for, or not to be told; and how sure. */
export function findingsSection(material: OpinionMaterial): Section {
  const { piece, parts } = material;
  const order = ['whole', ...parts.map((part) => part.id)];
  const findings = Object.values(piece.findings);
  const places = [...new Set(findings.map(placeOf))].toSorted(
    (a, b) => place(order, a) - place(order, b) || (a < b ? -1 : 1),
  );
  if (!hasEvidence(piece))
    return {
      id: 'findings',
      title: 'Findings',
      appendix: true,
      blocks: [{ kind: 'paragraph', as: 'note', words: 'Nothing has been recorded yet.' }],
    };
  return {
    id: 'findings',
    title: 'Findings, part by part',
    appendix: true,
    blocks: [...signBlocks(material, places), ...observationBlocks(material), ...lookedOverBlocks(material)],
  };
}

function signBlocks(material: OpinionMaterial, places: readonly string[]): Block[] {
  const findings = Object.values(material.piece.findings);
  if (findings.length === 0)
    return [{ kind: 'paragraph', as: 'note', words: 'No sign of the knowledge files was looked for.' }];
  const states = (state: Finding['state']) => findings.filter((each) => each.state === state).length;
  const unfit = states('does-not-apply');
  const notOfIt =
    unfit === 0 ? '' : `; ${unfit} ${unfit === 1 ? 'does' : 'do'} not apply to the part as it is made`;
  return [
    {
      kind: 'paragraph',
      words: `${counted(findings.length, 'sign')} ${findings.length === 1 ? 'was' : 'were'} looked for: ${states('present')} present, ${states('absent')} absent, ${states('could-not-tell') || 'none'} where one could not tell${notOfIt}. “Absent” means that the place was looked at and the sign was not there. A sign where one could not tell, that does not apply, or that was not looked for, carries no weight.`,
    },
    {
      kind: 'table',
      caption: 'What was looked for and what was found',
      columns: [
        { name: 'Sign', share: 3.4 },
        { name: 'Found', share: 1.7 },
        { name: 'In the examiner’s words', share: 5 },
      ],
      groups: places.map((at) => ({
        name: capital(material.partName(at)),
        rows: findings
          .filter((finding) => placeOf(finding) === at)
          .map((finding) => rowOf(finding, material)),
      })),
    },
  ];
}

/** What no sign covers, each marked as the examiner’s own, with how far they would expect it of each kind of piece. */
function observationBlocks(material: OpinionMaterial): Block[] {
  const observations = Object.values(material.piece.observations);
  if (observations.length === 0) return [];
  return [
    {
      kind: 'table',
      caption:
        'Seen by the examiner, and covered by no sign of the knowledge files: the examiner’s own observations',
      columns: [
        { name: 'Where', share: 2.2 },
        { name: 'What was seen, in the examiner’s words', share: 4.6 },
        { name: 'How far the examiner would expect it', share: 3.6 },
      ],
      groups: [
        {
          rows: observations.map((each) => [
            capital(material.partName(each.part)),
            [
              stopped(each.words),
              platesWith(material, (photo) => ({ shows: each.photos.includes(photo.id), marks: [] })),
              '(Examiner’s own.)',
            ]
              .filter((words) => words !== '')
              .join(' '),
            `${capital(expectedInWords(each.expected))}.`,
          ]),
        },
      ],
    },
  ];
}

/** The statement that nothing later was found in looking the whole over; where something was, that it is not weighed. */
function lookedOverBlocks({ piece, weighing }: OpinionMaterial): Block[] {
  if (!piece.lookedOver) return [];
  const isWeighed = weighing?.observations.some(({ id }) => id === lookedOverId) ?? false;
  return [
    {
      kind: 'paragraph',
      words: [
        'The examiner states, as their own: the whole was looked over for mends, later parts and changes, and none was found.',
        isWeighed
          ? ''
          : 'This is not weighed, since a finding or an observation tells of a mend, a change or a part from another piece.',
      ]
        .filter((words) => words !== '')
        .join(' '),
    },
  ];
}

function placeOf({ part }: Finding): string {
  return part ?? 'whole';
}

function place(order: readonly string[], id: string): number {
  const at = order.indexOf(id);
  return at < 0 ? order.length : at;
}

function rowOf(finding: Finding, material: OpinionMaterial): Words[] {
  const sure = !tellsOfPiece(finding.state)
    ? ''
    : finding.measured === undefined
      ? `, ${surenessWords[finding.sure]}`
      : ', measured';
  const photo = finding.inPhotoOnly ? '; in a photograph only' : '';
  return [
    material.signName(finding.sign),
    [{ strong: stateWords[finding.state] }, `${sure}${photo}`],
    [stopped(finding.words), platesOfFinding(finding, material)].filter((each) => each !== '').join(' '),
  ];
}

/** `Plate 3, mark 2.`: where the finding can be seen. */
function platesOfFinding(finding: Finding, material: OpinionMaterial): string {
  const key = findingKey(finding.sign, finding.part);
  return platesWith(material, (photo) => {
    const marks = photo.marks.filter((mark) => mark.finding === finding.id || mark.finding === key);
    return { shows: marks.length > 0 || finding.photos.includes(photo.id), marks };
  });
}

function platesWith(
  { piece, plateNumber }: OpinionMaterial,
  seenOn: (photo: Photo) => { shows: boolean; marks: readonly PhotoMark[] },
): string {
  const shown = Object.values(piece.photos).flatMap((photo) => {
    const number = plateNumber(photo.id);
    const { shows, marks } = seenOn(photo);
    if (number === undefined || !shows) return [];
    const markWords =
      marks.length === 0
        ? ''
        : `, ${marks.length === 1 ? 'mark' : 'marks'} ${listed(marks.map((mark) => `${mark.number}`))}`;
    return [{ number, words: `plate ${number}${markWords}` }];
  });
  const words = shown.toSorted((a, b) => a.number - b.number).map((each) => each.words);
  return words.length === 0 ? '' : `${capital(words.join('; '))}.`;
}

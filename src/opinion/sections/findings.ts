import { type Finding, findingKey } from '../../piece/finding.ts';
import type { Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { capital, counted, listed, stateWords, stopped, surenessWords } from '../wording.ts';

/** What was looked for, part by part: present, absent where it was looked for, or not to be told; and how sure. */
export function findingsSection(material: OpinionMaterial): Section {
  const { piece, parts } = material;
  const order = ['whole', ...parts.map((part) => part.id)];
  const findings = Object.values(piece.findings);
  const placeOf = (finding: Finding) => finding.part ?? 'whole';
  const places = [...new Set(findings.map(placeOf))].toSorted(
    (a, b) => place(order, a) - place(order, b) || (a < b ? -1 : 1),
  );
  const states = (state: Finding['state']) => findings.filter((each) => each.state === state).length;
  if (findings.length === 0)
    return {
      id: 'findings',
      title: 'Findings',
      blocks: [{ kind: 'paragraph', as: 'note', words: 'Nothing has been recorded yet.' }],
    };
  return {
    id: 'findings',
    title: 'Findings, part by part',
    blocks: [
      {
        kind: 'paragraph',
        words: `${counted(findings.length, 'sign')} ${findings.length === 1 ? 'was' : 'were'} looked for: ${states('present')} present, ${states('absent')} absent, ${states('could-not-tell') || 'none'} where one could not tell. “Absent” means that the place was looked at and the sign was not there. A sign where one could not tell, or that was not looked for, carries no weight.`,
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
    ],
  };
}

function place(order: readonly string[], id: string): number {
  const at = order.indexOf(id);
  return at < 0 ? order.length : at;
}

function rowOf(finding: Finding, material: OpinionMaterial): Words[] {
  const sure =
    finding.state === 'could-not-tell'
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
function platesOfFinding(finding: Finding, { piece, plateNumber }: OpinionMaterial): string {
  const key = findingKey(finding.sign, finding.part);
  const shown = Object.values(piece.photos).flatMap((photo) => {
    const number = plateNumber(photo.id);
    if (number === undefined) return [];
    const marks = photo.marks.filter((mark) => mark.finding === finding.id || mark.finding === key);
    if (marks.length === 0 && !finding.photos.includes(photo.id)) return [];
    const markWords =
      marks.length === 0
        ? ''
        : `, ${marks.length === 1 ? 'mark' : 'marks'} ${listed(marks.map((mark) => `${mark.number}`))}`;
    return [{ number, words: `plate ${number}${markWords}` }];
  });
  const words = shown.toSorted((a, b) => a.number - b.number).map((each) => each.words);
  return words.length === 0 ? '' : `${capital(words.join('; '))}.`;
}

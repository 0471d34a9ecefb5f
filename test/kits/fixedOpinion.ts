import { smallKnowledge } from '../../src/evidence/testing/smallKnowledge.ts';
import { composeOpinion } from '../../src/opinion/composeOpinion.ts';
import type { OpinionDocument } from '../../src/opinion/opinionDocument.ts';
import { piece } from '../../src/piece/piece.ts';
import type { Weighing } from '../../src/weighing/weighing.ts';
import { photoOf } from './opinions.ts';

const reading = (id: Weighing['leading'], probability: number, low: number, high: number) => ({
  id,
  probability,
  low,
  high,
});

const part = (id: string, name: string, standing: Weighing['parts'][number]['standing'], looked: number) => ({
  id,
  name,
  origin: { 'of-the-making': 0.9, repair: 0.1 },
  standing,
  words: 'Made up for a check.',
  years: { p50: [1750, 1770] as [number, number], p90: [1740, 1790] as [number, number], density: [] },
  looked,
});

/** A weighing written by hand: it says nothing of the model and moves with nothing. */
const weighing: Weighing = {
  readings: [
    reading('period-repaired', 0.72, 0.6, 0.85),
    reading('period-intact', 0.15, 0.1, 0.2),
    reading('later-bench-copy', 0.1, 0.04, 0.2),
    reading('made-to-deceive', 0.02, 0.01, 0.04),
    reading('period-altered', 0.008, 0.002, 0.01),
    reading('later-machine-copy', 0.001, 0.001, 0.001),
    { ...reading('made-up', 0.001, 0.001, 0.001), considered: false },
  ],
  leading: 'period-repaired',
  firm: false,
  firmness: { shareOfDraws: 0.9, draws: 100, why: 'It leads in 90 of 100 trials of the ranges.' },
  making: {
    answers: [
      { id: 'of-the-period', probability: 0.878, low: 0.75, high: 0.95 },
      { id: 'later-copy', probability: 0.101, low: 0.04, high: 0.2 },
      { id: 'to-deceive', probability: 0.02, low: 0.01, high: 0.04 },
      { id: 'put-together', probability: 0.001, low: 0.001, high: 0.001, considered: false },
    ],
    leading: 'of-the-period',
    firm: false,
    firmness: {
      shareOfDraws: 0.97,
      draws: 100,
      why: 'What leads does so in 97 of 100 trials of the ranges.',
    },
  },
  condition: {
    ifOfThePeriod: [
      { id: 'period-intact', share: 0.17 },
      { id: 'period-repaired', share: 0.82 },
      { id: 'period-altered', share: 0.01 },
    ],
    seen: { parts: 2, original: 1 },
    unseen: { parts: 0, laterExpected: 0 },
  },
  observations: [{ id: 'scribe', withinWhole: 4.1, againstRival: 2.4, words: '' }],
  unexplained: { unexplained: false, probability: 0.01, reason: 'The findings hang together.' },
  years: {
    p50: [1750, 1770],
    p90: [1740, 1790],
    density: [
      [1740, 0.1],
      [1745, 0.2],
      [1750, 0.3],
      [1755, 0.2],
      [1760, 0.1],
      [1765, 0.1],
    ],
    binding: [{ sign: 'late-screw', part: 'rail', end: 'to' }],
  },
  parts: [part('rail', 'rail', 'of-the-making', 2), part('leg-left', 'left leg', 'repair', 1)],
  alterations: [{ id: 'legs-replaced', name: 'Legs replaced', probability: 0.8 }],
  shops: [{ id: 'north', name: 'North', probability: 0.4 }],
  rival: 'later-bench-copy',
  weights: [
    {
      sign: 'odd-joint',
      part: 'rail',
      state: 'present',
      alone: -12.4,
      withinWhole: 6.2,
      againstRival: 3,
      words: '',
      periodAgainstLater: { alone: -12.4, withinWhole: 6.2 },
    },
    {
      sign: 'darkened',
      part: 'rail',
      state: 'present',
      alone: 9,
      withinWhole: 7.7,
      againstRival: 5,
      words: '',
      periodAgainstLater: { alone: 9, withinWhole: 7.7 },
    },
    {
      sign: 'cuff',
      part: 'leg-left',
      state: 'absent',
      alone: 0.3,
      withinWhole: 0,
      againstRival: 0,
      words: '',
      periodAgainstLater: { alone: 0.3, withinWhole: 0 },
    },
  ],
  contradictions: [
    {
      sign: 'odd-joint',
      part: 'rail',
      state: 'present',
      share: 0.02,
      question: '“Sign odd-joint” was seen on the rail. What explains it?',
      explained: true,
      explanations: [{ kind: 'shop', id: 'north', words: 'If it is work of North.', share: 0.92 }],
    },
  ],
  nextLooks: [
    {
      sign: 'worn',
      part: 'leg-right',
      bits: 0.2,
      minutes: 0.5,
      needs: 'turned-over',
      caution: 'Two to lift.',
    },
  ],
  reasonGroups: [
    {
      cause: { kind: 'making', id: 'making', name: 'The maker’s ways of building' },
      findings: [
        { sign: 'odd-joint', part: 'rail' },
        { sign: 'darkened', part: 'rail' },
      ],
      withinWhole: 14.2,
      againstRival: 13,
      words: 'moderate support for a period piece with later repairs rather than another reading',
    },
  ],
  altogether: { withinWhole: 9, againstRival: 8, words: '', periodAgainstLater: -4.4 },
  wouldChange: [
    {
      findings: [{ sign: 'darkened', part: 'rail', otherwise: 'not been there' }],
      to: 'later-bench-copy',
    },
  ],
  wouldChangeTried: '',
  byStartingOdds: [
    { odds: 'even', leading: 'period-repaired', probabilities: { 'period-repaired': 0.72 } as never },
    { odds: 'sceptical', leading: 'later-bench-copy', probabilities: { 'later-bench-copy': 0.5 } as never },
  ],
  sensitivity: [{ figure: 'Sign odd-joint: bench-copy', low: 0.6, high: 0.8 }],
  logEvidence: -3,
  ignored: [{ sign: 'scraped', part: 'finish', why: 'Looked for in a photograph that can’t show it.' }],
  versions: { knowledge: 'small', seed: 1, draws: 100 },
};

/** An opinion in which every kind of block and every turn of the wording comes up, from made-up knowledge. */
export function fixedOpinion(): OpinionDocument {
  const finding = (sign: string, of: string, state: string, words: string) => ({
    [`${sign}@${of}`]: { id: `${sign}@${of}`, sign, part: of, state, words, photos: ['one'] },
  });
  const bench = piece.parse({
    id: 'bench-1',
    title: 'A bench that does not exist',
    form: 'bench',
    claim: { period: [1740, 1760], place: 'Northam' },
    engagement: {
      client: 'A client',
      purpose: 'insurance',
      question: 'What is it?\nAnd how old?',
      examinedOn: '2026-03-02',
    },
    parts: { rail: { id: 'rail', woods: ['oak'], words: 'One plank.' } },
    findings: {
      ...finding('odd-joint', 'rail', 'present', 'Let in from above "like a drawer".'),
      ...finding('darkened', 'rail', 'present', ''),
      ...finding('cuff', 'leg-left', 'absent', 'Grain runs through.'),
      ...finding('worn', 'leg-left', 'could-not-tell', 'Painted over.'),
    },
    observations: {
      scribe: {
        id: 'scribe',
        words: 'A second scribe line beside the tenon, "never cut to".',
        part: 'rail',
        expected: {
          original: 'sometimes',
          repaired: 'sometimes',
          altered: 'often',
          married: 'often',
          copied: 'seldom',
          faked: 'hardly ever',
        },
        photos: ['one'],
      },
    },
    lookedOver: true,
    measures: {
      length: { id: 'length', mm: 1206.5, sigmaMm: 2, asEntered: '47 1/2', words: 'Along the front' },
    },
    photos: {
      one: photoOf('one', {
        caption: 'The joint',
        alternative: 'A dovetail in oak.',
        marks: [
          { id: 'm', number: 1, kind: 'point', points: [[0.5, 0.5]], words: '', finding: 'odd-joint@rail' },
        ],
      }),
    },
    opinion: {
      reading: 'period-intact',
      conclusion: 'A bench of about 1750.',
      reasons: 'It looks like one.',
      departure: 'I have seen the other end of the plank.',
      years: [1745, 1755],
      resolutions: { 'odd-joint@rail': 'North built so.' },
    },
  });
  return composeOpinion({
    piece: bench,
    weighing,
    knowledge: smallKnowledge(),
    drawing: [
      {
        id: 'front',
        svg: '<svg/>',
        caption: 'Front',
        alternative: 'A bench from the front.',
        widthMm: 60,
        heightMm: 30,
      },
    ],
    madeOn: '2026-11-25',
    version: 'test',
  });
}

import type { KnowledgeFile } from '../../src/knowledge/readEntries.ts';
import { soundKnowledge } from './soundKnowledge.ts';

/** A fault planted in sound knowledge: an edit of one file, and where the fault must be reported. */
export type Plant = {
  /** What was planted, in words. */
  planted: string;
  file: string;
  /** Text to take out and to put in its place; must be there. */
  edit: readonly [string, string];
  /** Id of the entry the fault must name. */
  entry: string;
  /** Text on the line the fault must point to, after the edit. */
  onLine: string;
};

/** At least one plant for each check, by the check's id. */
export const plantedKnowledge: Readonly<Record<string, readonly Plant[]>> = {
  shape: [
    {
      planted: 'a drawing with words in its path',
      file: 'sign-drawings/saws.yaml',
      edit: ['M 0 0 L 50 50', 'from here to there'],
      entry: 'saw-arcs-drawn',
      onLine: 'from here',
    },
    {
      planted: 'a figure with a hyphen for its dash',
      file: 'signs/saw-marks.yaml',
      edit: ['bench-copy: "40, 20–60"', 'bench-copy: "40, 20-60"'],
      entry: 'leg-square',
      onLine: 'bench-copy: "40, 20-60"',
    },
    {
      planted: 'a look with no stop',
      file: 'signs/saw-marks.yaml',
      edit: ['cross the face.', 'cross the face'],
      entry: 'saw-arcs',
      onLine: 'look: Curved',
    },
    {
      planted: 'a misspelled field',
      file: 'signs/saw-marks.yaml',
      edit: ['minutes: 2', 'minuets: 2'],
      entry: 'saw-arcs',
      onLine: 'minuets: 2',
    },
    {
      planted: 'a missing field',
      file: 'signs/saw-marks.yaml',
      edit: ['    name: Square legs\n', ''],
      entry: 'leg-square',
      onLine: 'id: leg-square',
    },
    {
      planted: 'a count that names no source',
      file: 'shops/mill-lane.yaml',
      edit: [
        'shows: "90, 70–97"',
        'shows: { in100: "90, 70–97", counts: { seen: 2, of: 3, where: stools } }',
      ],
      entry: 'mill-lane',
      onLine: 'counts: { seen: 2',
    },
    {
      planted: 'an id with a capital',
      file: 'sources.yaml',
      edit: ['id: saw-book', 'id: Saw-book'],
      entry: 'Saw-book',
      onLine: 'id: Saw-book',
    },
    {
      planted: 'a year off the axis',
      file: 'signs/saw-marks.yaml',
      edit: ['earliest: 1814', 'earliest: 1184'],
      entry: 'saw-arcs',
      onLine: 'earliest: 1184',
    },
    {
      planted: 'a wood that moves more across its rings',
      file: 'woods.yaml',
      edit: ['radialPercent: 4.2', 'radialPercent: 10.2'],
      entry: 'elm-grey',
      onLine: 'shrinkage: {',
    },
    {
      planted: 'a wood with no figure',
      file: 'woods.yaml',
      edit: [
        'coefficient: { radial: 0.0018, tangential: 0.0037, source: wood-book, at: "p. 9", read: memory },\n      ',
        '',
      ],
      entry: 'oak-grey',
      onLine: 'id: oak-grey',
    },
    {
      planted: 'a wood whose figure nobody read',
      file: 'woods.yaml',
      edit: [', source: wood-book, at: "p. 9", read: memory } }', ', source: wood-book, at: "p. 9" } }'],
      entry: 'elm-grey',
      onLine: 'shrinkage: {',
    },
  ],
  'ids-unique': [
    {
      planted: 'two signs of one id',
      file: 'signs/saw-marks.yaml',
      edit: ['id: saw-arcs', 'id: leg-square'],
      entry: 'leg-square',
      onLine: 'id: leg-square',
    },
    {
      planted: 'two parts of one id in a form',
      file: 'forms/stool.yaml',
      edit: ['id: rush-seat,', 'id: front-leg-left,'],
      entry: 'stool',
      onLine: 'kind: rush-seat',
    },
    {
      planted: 'two woods of one id',
      file: 'woods.yaml',
      edit: ['id: oak-grey', 'id: elm-grey'],
      entry: 'elm-grey',
      onLine: 'Grey oak',
    },
  ],
  'file-names': [
    {
      planted: 'a shop whose id is not its file’s name',
      file: 'shops/mill-lane.yaml',
      edit: ['id: mill-lane', 'id: mill-road'],
      entry: 'mill-road',
      onLine: 'id: mill-road',
    },
    {
      planted: 'a family of another name than its file',
      file: 'signs/saw-marks.yaml',
      edit: ['family: saw-marks', 'family: sawing'],
      entry: 'sawing',
      onLine: 'family: sawing',
    },
  ],
  'references-exist': [
    {
      planted: 'a source that is not listed',
      file: 'signs/saw-marks.yaml',
      edit: ['source: saw-book', 'source: saw-bok'],
      entry: 'saw-arcs',
      onLine: 'saw-bok',
    },
    {
      planted: 'a measurement that speaks of a sign that is not there',
      file: 'measurements.yaml',
      edit: ['top: [leg-square]', 'top: [leg-sqare]'],
      entry: 'measurements',
      onLine: 'leg-sqare',
    },
    {
      planted: 'tool marks of a sign that is not there',
      file: 'measurements.yaml',
      edit: ['sign: saw-arcs', 'sign: saw-arks'],
      entry: 'measurements',
      onLine: 'saw-arks',
    },
    {
      planted: 'a kind of part no form has',
      file: 'signs/saw-marks.yaml',
      edit: ['on: [front-leg]', 'on: [front-log]'],
      entry: 'leg-square',
      onLine: 'front-log',
    },
    {
      planted: 'a sign it is mistaken for that is not there',
      file: 'signs/saw-marks.yaml',
      edit: ['mistakenFor: [saw-arcs]', 'mistakenFor: [saw-arks]'],
      entry: 'leg-square',
      onLine: 'saw-arks',
    },
    {
      planted: 'a drawing of a sign that is not there',
      file: 'sign-drawings/saws.yaml',
      edit: ['signs: [saw-arcs]', 'signs: [saw-archs]'],
      entry: 'saw-arcs-drawn',
      onLine: 'saw-archs',
    },
    {
      planted: 'a reason for a sign that is not there',
      file: 'signs-not-drawn.yaml',
      edit: ['signs: [leg-square]', 'signs: [leg-square, leg-sqare]'],
      entry: 'by-touch',
      onLine: 'leg-sqare',
    },
    {
      planted: 'a cause that is no alteration',
      file: 'signs/saw-marks.yaml',
      edit: ['hangsOn: making', 'hangsOn: alteration/leg-turned'],
      entry: 'leg-square',
      onLine: 'leg-turned',
    },
    {
      planted: 'a form’s alteration that is not there',
      file: 'forms/stool.yaml',
      edit: ['alterations: [leg-pieced]', 'alterations: [arms-added]'],
      entry: 'stool',
      onLine: 'arms-added',
    },
    {
      planted: 'a drawn part the form lacks',
      file: 'forms/stool.yaml',
      edit: ['part: front-leg-left', 'part: front-leg-right'],
      entry: 'stool',
      onLine: 'front-leg-right',
    },
    {
      planted: 'a feature the form lacks',
      file: 'forms/stool.yaml',
      edit: ['when: { seat: [rush] }', 'when: { seat: [cane] }'],
      entry: 'stool',
      onLine: 'cane',
    },
    {
      planted: 'a shop’s form that is not there',
      file: 'shops/mill-lane.yaml',
      edit: ['forms: [stool]', 'forms: [bench]'],
      entry: 'mill-lane',
      onLine: 'bench',
    },
    {
      planted: 'a habit of a sign that is not there',
      file: 'shops/mill-lane.yaml',
      edit: ['sign: leg-square', 'sign: leg-round'],
      entry: 'mill-lane',
      onLine: 'leg-round',
    },
    {
      planted: 'a changed kind of part that is not there',
      file: 'alterations/chairs.yaml',
      edit: ['front-leg:', 'hind-leg:'],
      entry: 'leg-pieced',
      onLine: 'hind-leg',
    },
    {
      planted: 'default odds that are not there',
      file: 'making.yaml',
      edit: ['defaultOdds: even', 'defaultOdds: level'],
      entry: 'making',
      onLine: 'level',
    },
  ],
  'signs-drawn-or-told': [
    {
      planted: 'a sign with neither drawing nor reason',
      file: 'signs-not-drawn.yaml',
      edit: ['signs: [leg-square]', 'signs: [saw-arcs]'],
      entry: 'leg-square',
      onLine: 'id: leg-square',
    },
    {
      planted: 'a reason for a sign that is drawn',
      file: 'signs-not-drawn.yaml',
      edit: ['signs: [leg-square]', 'signs: [leg-square, saw-arcs]'],
      entry: 'by-touch',
      onLine: 'saw-arcs',
    },
    {
      planted: 'a sign under one reason twice',
      file: 'signs-not-drawn.yaml',
      edit: ['signs: [leg-square]', 'signs: [leg-square, leg-square]'],
      entry: 'by-touch',
      onLine: 'leg-square',
    },
  ],
  'works-used': [
    {
      planted: 'a work nobody cites',
      file: 'signs/saw-marks.yaml',
      edit: ['source: saw-book, at: "p. 3"', 'by: judgement'],
      entry: 'saw-book',
      onLine: 'id: saw-book',
    },
  ],
  'figures-sourced': [
    {
      planted: 'a basis with nobody’s word',
      file: 'alterations/chairs.yaml',
      edit: ['basis: { by: judgement, why', 'basis: { why'],
      entry: 'leg-pieced',
      onLine: 'happened',
    },
    {
      planted: 'a span with nobody’s word',
      file: 'signs/saw-marks.yaml',
      edit: ['basis: { source: saw-book, at: "p. 3", why', 'sources: [saw-book]\n    basis: { why'],
      entry: 'saw-arcs',
      onLine: 'span:',
    },
  ],
  'figures-in-order': [
    {
      planted: 'a best figure above its highest',
      file: 'shops/mill-lane.yaml',
      edit: ['share: "2, 1–4"', 'share: "5, 1–4"'],
      entry: 'mill-lane',
      onLine: 'share: "5',
    },
  ],
  'judged-fit': [
    {
      planted: 'a judgment of a state the sign has not',
      file: 'judged-apart/saw-marks.yaml',
      edit: ['machine-copy: {', 'machine-made: {'],
      entry: 'leg-square',
      onLine: 'machine-made: {',
    },
    {
      planted: 'a judgment of a part that the alteration leaves',
      file: 'judged-apart/alterations.yaml',
      edit: ['changes: { front-leg', 'changes: { rear-leg'],
      entry: 'leg-pieced',
      onLine: 'rear-leg',
    },
    {
      planted: 'a judgment of a part that no form of the family has',
      file: 'judged-apart/renewals.yaml',
      edit: ['renewed: { seating', 'renewed: { table'],
      entry: 'front-leg',
      onLine: 'renewed: { table',
    },
    {
      planted: 'a judge whom nobody describes',
      file: 'judged-apart/saw-marks.yaml',
      edit: ['machine-copy: { A:', 'machine-copy: { C:'],
      entry: 'leg-square',
      onLine: 'machine-copy: { C:',
    },
    {
      planted: 'a judgment out of order',
      file: 'judged-apart/renewals.yaml',
      edit: ['"15, 8–26"', '"15, 18–26"'],
      entry: 'front-leg',
      onLine: '15, 18–26',
    },
  ],
  'counts-fit': [
    {
      planted: 'more seen than were counted',
      file: 'shops/mill-lane.yaml',
      edit: [
        'shows: "90, 70–97"',
        'shows: { in100: "90, 70–97", counts: { seen: 4, of: 3, where: stools, source: saw-book } }',
      ],
      entry: 'mill-lane',
      onLine: 'seen: 4',
    },
    {
      planted: 'a count beside a figure without range',
      file: 'shops/mill-lane.yaml',
      edit: [
        'shows: "90, 70–97"',
        'shows: { in100: "90, 90–90", counts: { seen: 2, of: 3, where: stools, source: saw-book } }',
      ],
      entry: 'mill-lane',
      onLine: '90–90',
    },
  ],
  'shares-believable': [
    {
      planted: 'a figure above 100',
      file: 'shops/mill-lane.yaml',
      edit: ['"90, 70–97"', '"90, 70–197"'],
      entry: 'mill-lane',
      onLine: '70–197',
    },
    {
      planted: 'never, with no reason',
      file: 'signs/saw-marks.yaml',
      edit: ['out-of-use: "1, 0.3–3"', 'out-of-use: "0, 0–3"'],
      entry: 'saw-arcs',
      onLine: '"0, 0–3"',
    },
    {
      planted: 'a line with a share of 1',
      file: 'making.yaml',
      edit: ['used: { natural: [[0, 0.1], [2000, 0.2]]', 'used: { natural: [[0, 0.1], [2000, 1]]'],
      entry: 'making',
      onLine: '[2000, 1]',
    },
  ],
  'years-in-order': [
    {
      planted: 'a span that runs backwards',
      file: 'signs/saw-marks.yaml',
      edit: ['commonFrom: 1830', 'commonFrom: 1803'],
      entry: 'saw-arcs',
      onLine: 'span:',
    },
    {
      planted: 'a style that runs backwards',
      file: 'forms/stool.yaml',
      edit: ['[1700, 1800]', '[1800, 1700]'],
      entry: 'stool',
      onLine: 'styleSpan',
    },
    {
      planted: 'a line that stands still',
      file: 'making.yaml',
      edit: ['machine-copy: [[1850, 0], [1900, 1]]', 'machine-copy: [[1900, 0], [1900, 1]]'],
      entry: 'making',
      onLine: '[[1900, 0]',
    },
    {
      planted: 'a hard floor with no source',
      file: 'signs/saw-marks.yaml',
      edit: ['commonFrom: 1830 }', 'commonFrom: 1830, hardFloor: true }'],
      entry: 'saw-arcs',
      onLine: 'hardFloor',
    },
  ],
  'measures-in-order': [
    {
      planted: 'a usual height below the lowest',
      file: 'forms/stool.yaml',
      edit: ['typicalMm: 430', 'typicalMm: 340'],
      entry: 'stool',
      onLine: 'typicalMm: 340',
    },
  ],
  'rows-complete': [
    {
      planted: 'a state left out',
      file: 'signs/saw-marks.yaml',
      edit: ['      machine-copy: "50, 30–70"\n', ''],
      entry: 'leg-square',
      onLine: 'shows:',
    },
    {
      planted: 'a state of another cause',
      file: 'signs/saw-marks.yaml',
      edit: ['out-of-use:', 'not-in-use:'],
      entry: 'saw-arcs',
      onLine: 'not-in-use',
    },
    {
      planted: 'a dated sign with no span',
      file: 'signs/saw-marks.yaml',
      edit: ['    span: { earliest: 1814, commonFrom: 1830 }\n', ''],
      entry: 'saw-arcs',
      onLine: 'hangsOn: part-year',
    },
  ],
  'rows-differ': [
    {
      planted: 'a sign that says nothing',
      file: 'signs/saw-marks.yaml',
      edit: [
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"',
        'machine-copy: "40, 30–70"\n      to-deceive: "40, 25–65"',
      ],
      entry: 'leg-square',
      onLine: 'shows:',
    },
  ],
  'habits-fit': [
    {
      planted: 'a habit of a sign that hangs on the year',
      file: 'shops/mill-lane.yaml',
      edit: ['sign: leg-square, on: [front-leg]', 'sign: saw-arcs'],
      entry: 'mill-lane',
      onLine: 'sign: saw-arcs',
    },
    {
      planted: 'a habit on a part where the sign can’t be',
      file: 'shops/mill-lane.yaml',
      edit: ['on: [front-leg]', 'on: [rush-seat]'],
      entry: 'mill-lane',
      onLine: 'rush-seat',
    },
  ],
  'campaigns-fit': [
    {
      planted: 'a campaign that nobody knows',
      file: 'signs/saw-marks.yaml',
      edit: [
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"',
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"\n    campaign: { kind: gilded, shows: "20, 10–30" }',
      ],
      entry: 'leg-square',
      onLine: 'kind: gilded',
    },
    {
      planted: 'a campaign that leaves what the maker did',
      file: 'signs/saw-marks.yaml',
      edit: [
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"',
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"\n    campaign: { kind: reglued, shows: "20, 10–30" }',
      ],
      entry: 'leg-square',
      onLine: 'kind: reglued',
    },
  ],
  'conditions-met': [
    {
      planted: 'a feature that no form has',
      file: 'signs/saw-marks.yaml',
      edit: [
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"',
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"\n    when: { back: [splat] }',
      ],
      entry: 'leg-square',
      onLine: 'when: { back',
    },
    {
      planted: 'an option that no form has of a feature',
      file: 'signs/saw-marks.yaml',
      edit: [
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"',
        'machine-copy: "50, 30–70"\n      to-deceive: "45, 25–65"\n    when: { seat: [rush, cane] }',
      ],
      entry: 'leg-square',
      onLine: 'when: { seat',
    },
    {
      planted: 'a kind of part that the form does not have, settled by an option',
      file: 'forms/stool.yaml',
      edit: ['{ id: wood, name: Wood }', '{ id: wood, name: Wood, makes: { arm: { turned: true } } }'],
      entry: 'stool',
      onLine: 'makes: { arm',
    },
    {
      planted: 'a kind of part that the form does not have, settled by the form',
      file: 'forms/stool.yaml',
      edit: ['\nparts:\n', '\nmakes:\n  splat: { carved: true }\nparts:\n'],
      entry: 'stool',
      onLine: 'splat: { carved',
    },
  ],
  'making-complete': [
    {
      planted: 'no lines for parts of other old pieces',
      file: 'making.yaml',
      edit: ['  spared: {', '  kept: {'],
      entry: 'making',
      onLine: 'use:',
    },
  ],
  'repeats-grouped': [
    {
      planted: 'one sign in two wordings',
      file: 'signs/saw-marks.yaml',
      edit: [
        '  - id: saw-arcs\n',
        '  - id: legs-square\n    name: The legs are square\n    look: Every leg has four flat sides.\n    on: [front-leg]\n    hangsOn: making\n    minutes: 1\n    shows: { period: "40, 20–60", bench-copy: "40, 20–60", machine-copy: "50, 30–70", to-deceive: "40, 20–60" }\n    basis: { by: judgement, why: "Made up for a test." }\n  - id: saw-arcs\n',
      ],
      entry: 'legs-square',
      onLine: 'name: The legs are square',
    },
  ],
  'sentences-stop': [
    {
      planted: 'a note with no stop',
      file: 'sources.yaml',
      edit: ['note: Made up for a test.', 'note: Made up for a test'],
      entry: 'saw-book',
      onLine: 'note:',
    },
  ],
  'entries-sorted': [
    {
      planted: 'signs out of order',
      file: 'signs/saw-marks.yaml',
      edit: ['id: saw-arcs', 'id: arcs-of-saw'],
      entry: 'arcs-of-saw',
      onLine: 'id: arcs-of-saw',
    },
  ],
  'files-short': [
    {
      planted: 'a file of more than 400 lines',
      file: 'alterations/chairs.yaml',
      edit: ['alterations:', `alterations:${'\n'.repeat(400)}`],
      entry: '',
      onLine: '',
    },
  ],
};

/** The sound files with one fault planted. @throws RangeError if the text to take out is not there */
export function plant({ file, edit }: Plant): KnowledgeFile[] {
  return soundKnowledge.map((each) => {
    if (each.path !== file) return each;
    if (!each.text.includes(edit[0])) throw new RangeError(`${file} does not hold "${edit[0]}"`);
    return { path: each.path, text: each.text.replace(edit[0], edit[1]) };
  });
}

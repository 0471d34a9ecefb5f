import { beforeAll, expect, it } from 'vitest';
import type { CaseToWeigh } from '../../src/evidence/caseToWeigh.ts';
import { bestDraw } from '../../src/evidence/figures.ts';
import { prepareCase } from '../../src/evidence/prepareCase.ts';
import { askedOf } from '../../src/knowledge/askedOf.ts';
import type { Form, Knowledge, Sign } from '../../src/knowledge/schema.ts';
import { posteriorFor } from '../../src/summation/evaluate.ts';
import { layOut } from '../../src/summation/makeLayout.ts';
import { fixModel } from '../../src/summation/model.ts';
import { shares } from '../../src/summation/readingPosterior.ts';
import { makingShares } from '../../src/weighing/makingFirst.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

let knowledge: Knowledge;
beforeAll(async () => {
  knowledge = await houseKnowledge();
}, 60_000);

/** Chairs of turned posts and rungs. */
const turnedChair = /^(banister-back|ladder-back|rocking)-chair$/;

type Features = Record<string, string>;
type Case = { form: Form; features: Features };

/**
 * What a person who has such a piece before them answers without looking: the thing can't be there. Common practice, written here
 * beside the knowledge files and not out of them: which signs by their names, and of which pieces and kinds of part.
 */
const cannot: readonly [what: RegExp, of: (one: Case, kind: string) => boolean, always?: 'present'][] = [
  [
    /^(Turned? (part|profile)|Turning left|Fine lines cut by the turner|Front stretcher turned)/,
    ({ form, features }, kind) =>
      (/leg$/.test(kind) && /straight|tapered|cabriole|square|pad|claw/.test(legsOf(features))) ||
      (kind === 'foot' && /bracket|ogee|french|block|paw/.test(features.feet ?? '')) ||
      (/post$/.test(kind) && /^(side-chair|armchair)$/.test(form.id)) ||
      (kind === 'bedpost' && features.work === 'square'),
  ],
  [
    /\b(tacks?|tack holes|staple holes|edge roll|early cover)\b/i,
    ({ form, features }, kind) =>
      /rail$/.test(kind) &&
      (/rush|slip|cane/.test(features.seat ?? '') || turnedChair.test(form.id) || features.type === 'joint'),
  ],
  [
    /\bcarving|carver\b/i,
    ({ features }, kind) =>
      (/leg$/.test(kind) && /straight|tapered/.test(legsOf(features))) ||
      (kind === 'bedpost' && /turned|square/.test(features.work ?? '')) ||
      (kind === 'foot' && /bracket|ogee|french|block|ball|turned/.test(features.feet ?? '')),
  ],
  [
    /numeral/i,
    ({ form, features }) =>
      /rush|over|cane/.test(features.seat ?? '') || form.id === 'easy-chair' || turnedChair.test(form.id),
  ],
  [
    /\bknees\b/,
    ({ form, features }) =>
      /straight/.test(legsOf(features)) || turnedChair.test(form.id) || features.type === 'joint',
  ],
  [
    /chamfered by hand/,
    ({ form }) => /^(caned-back|windsor)-chair$/.test(form.id) || turnedChair.test(form.id),
  ],
  [/worn by the rush/, ({ form }) => /^(balloon-back|caned-back|klismos)-chair$/.test(form.id)],
  [
    /^(Leg tops|Crossed wedges|Spindle shaved|Leg notched|Lowest stretcher)/,
    ({ form }) => form.id === 'rocking-chair',
  ],
  [/^Undersides of the feet|mops/, ({ form }, kind) => form.id === 'rocking-chair' && kind === 'leg'],
  [/^Back of the case/, ({ form }) => form.family === 'glass' || form.family === 'clock'],
  [
    /^Rear bracket dovetailed/,
    ({ form, features }) => form.family !== 'case' || /claw|ball/.test(features.feet ?? ''),
  ],
  [/[Cc]uff/, ({ features }, kind) => kind === 'foot' && /bracket|ogee|claw|ball/.test(features.feet ?? '')],
  [/mops|brooms/, ({ form }) => form.id === 'dressing-glass'],
  [
    /^(Dovetails |Few broad, coarse dovetails|Very narrow pins|Saw cuts run past the sockets|Row of dovetails)/,
    ({ form, features }, kind) =>
      (features.build === 'nailed' && /^chest-/.test(kind)) ||
      (kind === 'case-side' && /^(commode|dresser|kas|washstand)$/.test(form.id)),
  ],
  [/^Sides framed and paneled/, ({ form }) => form.id === 'six-board-chest'],
  [
    /^(Holes bored with a|Compass point and scribed|Top held by screws from gouged)/,
    ({ form }) => /^(six-board-chest|joined-chest|commode|cabinet-on-stand|cellaret)$/.test(form.id),
  ],
  [
    /^(Full dustboards|Dustboards|Dividers dovetailed through|Cleats stand out|Half-round or double bead)/,
    ({ form }) => /^(dresser|six-board-chest|cellaret)$/.test(form.id),
  ],
  [/^Cut-out ends worn short/, ({ features }) => /bracket|ball/.test(features.feet ?? '')],
  [/^(Plate grooves|Holes of hooks)/, ({ form }) => /^(desk-and-bookcase|clothes-press)$/.test(form.id)],
  [
    /^(Sides of the recess|Housings of long dividers|Paired holes and clinch marks)/,
    ({ form }) => form.id === 'cellaret',
  ],
  [/^Round plug or new veneer/, ({ features }) => features.type === 'night'],
  [/^Mortise with rounded ends/, ({ form }) => /^(windsor-chair|ladder-back-chair)$/.test(form.id)],
  [
    /^(Cheeks under the seat board|Marks of weights and pendulum|Old rubs of weights|Panel shrunk|Pale where frame|Base, skirt or foot|Shelves rubbed)/,
    ({ form }) => /^(shelf|wall)-clock$/.test(form.id),
  ],
  [/^Undersides of the feet|mops/, ({ form }) => form.id === 'shelf-clock'],
  [
    /^(Battens or end boards|Ring or arc rubbed by a turning top)/,
    ({ form }) => /^(gate-leg|tea|side|sofa)-table$/.test(form.id),
  ],
  [/^Round top shrunk/, ({ form }) => /^(tea|side|sofa)-table$/.test(form.id)],
  [/knuckle joint/, ({ form }) => form.id === 'gate-leg-table'],
  [/^Rule joint/, ({ features }) => features.joint === 'tongue'],
  [/^Rear legs hardly raked/, ({ form }) => /^(banister-back|caned-back|rocking)-chair$/.test(form.id)],
  [/^Seat at the height of a modern/, ({ form }) => form.id === 'caned-back-chair'],
  [/^Cords of the weights/, ({ features }) => features.movement === 'brass-springs'],
  [/^Rim /, ({ features }) => features.top === 'plain'],
  [
    /^(Holes bored with a|Full dustboards|Dustboards|One full dustboard|Dividers dovetailed|Half-round or double bead|Shadow under the case|Traces of other feet)/,
    ({ form }) => form.family === 'table',
  ],
  [/^Corners that never had blocks/, ({ form }) => turnedOrCaned(form), 'present'],
  [
    /^(Seat rail let into the top of|Side-rail tenon coming through)/,
    ({ form }) => turnedChair.test(form.id),
  ],
  [/brass nails/, ({ form }) => turnedChair.test(form.id)],
  [
    /^Finials and post tops/,
    ({ form }) => /^(balloon-back|caned-back|easy|klismos)-chair$|^settee$/.test(form.id),
  ],
  [
    /worn by the rush/,
    ({ form, features }) =>
      /slip|over/.test(features.seat ?? '') || /^(easy-chair|settee|stool)$/.test(form.id),
  ],
  [/^Rear legs hardly raked/, ({ form }) => form.id === 'stool', 'present'],
  [/^Rear legs hardly raked/, ({ form }) => form.id === 'klismos-chair'],
  [/^Tenons held by wooden pegs/, ({ form }) => form.id === 'balloon-back-chair'],
  [/^Dial and mask of the hood/, ({ form }) => /^(shelf|wall)-clock$/.test(form.id)],
  [/^White painted iron dial/, ({ features }) => features.movement === 'wood-weights'],
  [/^Compass point and scribed/, ({ form }) => form.family === 'case'],
  [/^Planks of the top/, ({ form }) => /^(sofa|tea|work)-table$|^washstand$/.test(form.id)],
  [/^Round top shrunk/, ({ features }) => features.top === 'square'],
  [
    /^Ring or arc rubbed by a turning top/,
    ({ form }) => /^(drop-leaf|pembroke|refectory|work)-table$|^washstand$/.test(form.id),
  ],
  [/^Panel shrunk/, ({ form }) => /^(cabinet-on-stand|fall-front-secretary|washstand)$/.test(form.id)],
  [
    /^Sides of one wide board/,
    ({ form }) => /^(cellaret|dressing-glass|tall-case-clock|washstand|work-table)$/.test(form.id),
  ],
  [/^Back of the panel hewn/, ({ form }) => form.id === 'dresser'],
  [/^(Cross stretcher let into|Dark and pale meet where)/, ({ form }) => form.id === 'windsor-chair'],
  [/^Spindle shaved/, ({ form }) => form.id === 'tilt-top-table'],
  [
    /^Ring or arc rubbed by a turning top/,
    ({ form, features }) => features.birdcage === 'no' || /^(candlestand|dining-table)$/.test(form.id),
  ],
  [/^(Arc worn under the leaf|Hinge beds)/, ({ features }) => features.support === 'pillars'],
  [/^Panel shrunk/, ({ features }) => features.doors === 'glazed'],
];

function turnedOrCaned({ id }: Form): boolean {
  return turnedChair.test(id) || id === 'caned-back-chair';
}

function legsOf({ legs = '', type = '', support = '', base = '' }: Features): string {
  return [legs, type.replace('stuffed-', ''), support, base].join(' ');
}

/** Every form as its first choices make it, and with each other choice in turn. */
function cases(): Case[] {
  return Object.values(knowledge.forms).flatMap((form) => {
    const usual = Object.fromEntries(form.features.map(({ id, options }) => [id, options[0]?.id ?? '']));
    const others = form.features.flatMap(({ id, options }) =>
      options.slice(1).map((each) => ({ ...usual, [id]: each.id })),
    );
    return [usual, ...others].map((features) => ({ form, features }));
  });
}

/** The trivial answers of a piece, one to a sign and kind of part. */
function trivial(one: Case, signs: readonly Sign[]): CaseToWeigh['findings'] {
  const { form, features } = one;
  const there = form.parts.filter(({ when }) =>
    Object.entries(when).every(([id, options]) => options.includes(features[id] ?? '')),
  );
  const kinds = [...new Map(there.map((part) => [part.kind, part])).values()];
  return signs.flatMap((sign) =>
    kinds
      .filter(({ kind }) => askedOf(sign, kind, form))
      .flatMap((part) => {
        const known = cannot.find(([what, of]) => what.test(sign.name) && of(one, part.kind));
        return known === undefined ? [] : { sign: sign.id, part: part.id, state: known[2] ?? 'absent' };
      }),
  );
}

/** Decibans that answers move a period piece against a later one. */
function drift({ form, features }: Case, findings: CaseToWeigh['findings'], known: Knowledge): number {
  const decibans = (mine: CaseToWeigh['findings']) => {
    const ready = prepareCase({ form: form.id, features, mode: 'in-hand', findings: mine }, known, 2026);
    if (!ready.ok) throw new Error(`${form.id} can't be weighed`);
    const made = makingShares(shares(posteriorFor(fixModel(layOut(ready.prepared), bestDraw()))));
    return 10 * Math.log10(made['of-the-period'] / (made['later-copy'] + made['to-deceive']));
  };
  return findings.length === 0 ? 0 : decibans(findings) - decibans([]);
}

it('is moved by no answer that is true of every such piece, whatever form and choices', () => {
  const signs = Object.values(knowledge.signs);
  const all = cases().map((one) => ({ one, findings: trivial(one, signs) }));
  expect(all.length).toBeGreaterThan(100);
  expect(all.filter(({ findings }) => findings.length > 0).length).toBeGreaterThan(60);
  const moved = all
    .map(({ one, findings }) => ({ form: one.form.id, ...one.features, by: drift(one, findings, knowledge) }))
    .filter(({ by }) => Math.abs(by) >= 2);
  expect(moved).toEqual([]);
}, 60_000);

it('would be moved if signs had no conditions', () => {
  const bare = {
    ...knowledge,
    signs: Object.fromEntries(
      Object.entries(knowledge.signs).map(([id, { when: _, make: __, notForms: ___, ...sign }]) => [
        id,
        sign,
      ]),
    ),
  };
  const side = knowledge.forms['side-chair'];
  const ladder = knowledge.forms['ladder-back-chair'];
  if (side === undefined || ladder === undefined) throw new Error('a form is gone');
  const usual = { seat: 'rush', back: 'ladder', stretchers: 'box', legs: 'straight', splat: 'solid' };
  for (const one of [
    { form: side, features: usual },
    { form: ladder, features: {} },
  ])
    expect(Math.abs(drift(one, trivial(one, Object.values(bare.signs)), bare))).toBeGreaterThan(2);
});

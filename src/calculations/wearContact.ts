import { z } from 'zod';
import { partsOf } from '../drawing/partsOf.ts';
import { usualSizes } from '../drawing/usualSizes.ts';
import type { Fault } from '../ground/fault.ts';
import { refuse } from '../ground/fault.ts';
import { agreement } from '../wear/agreement.ts';
import { contactsOf } from '../wear/contactsOf.ts';
import { contraryPlaces } from '../wear/contraryPlaces.ts';
import { places, type Surface } from '../wear/surface.ts';
import { type CalculationContext, type CalculationResult, defineCalculation } from './define.ts';

const shares = z
  .array(z.array(z.number().min(0).max(1)).length(places))
  .min(1)
  .max(8);

const input = z.strictObject({
  /** An id of the forms in the knowledge files. */
  form: z.string().min(1),
  /** Option by feature, as on the piece: the first option where left out. */
  features: z.record(z.string(), z.string()).default({}),
  /** Measures of the piece in mm by their id; the form’s usual sizes where left out. */
  measures: z.record(z.string(), z.number().positive().max(10_000)).default({}),
  /** Only these parts; all where left out. */
  parts: z.array(z.string()).min(1).optional(),
  /** The wear that is there, painted on surfaces of the answer: 0 sharp to 1 deepest, face by face, 24 places along. Paint only what was looked at. */
  worn: z
    .array(z.strictObject({ part: z.string(), surface: z.int().min(0).default(0), grid: shares }))
    .max(200)
    .optional(),
});
type Input = z.infer<typeof input>;

const surfaceShape = z.strictObject({
  part: z.string(),
  kind: z.string(),
  /** Counted from 0 within the part. */
  surface: z.int(),
  by: z.string(),
  along: z.strictObject({ from: z.string(), to: z.string(), lengthMm: z.number() }),
  faces: z.array(z.string()),
  per100Uses: z.number(),
  grid: z.array(z.array(z.number())),
});

/** `wear.contact`: see its own fields. */
export const wearContact = defineCalculation({
  id: 'wear.contact',
  answers:
    'Where would feet, hands, backs and drawers have worn this piece, and does the wear that is there agree?',
  method:
    'By the kind of each part, whatever form it stands in. Where what touches comes to lie scatters normally about a place that body measures give (feet a quarter of the hip breadth either side of the middle, a hand over the end of an arm), and covers its own breadth; ' +
    'how many of 100 uses touch a part follows from heights (a stretcher below half of the lower leg is in reach of feet, and is sought where the seat is higher than the hollow of the knee). Runners and drawers: how long each place rubs while the drawer is drawn to three quarters. ' +
    'grid is the touching by face and by 24 places along, the most touched place of the surface 1. The score: worn places (half of the deepest wear or more) against the rest, over all painted surfaces, as the area under the curve with the uncertainty of Hanley and McNeil on a third of ' +
    'the places, and Spearman’s rank correlation. What the agreement says of use tells findings.measured. contrary lists faces worn where nothing touches and sharp where much does: wear underneath and a sharp top is as telling as no wear.',
  source:
    'Body measures: Pheasant, Bodyspace (British adults), in part read as reproduced by a university course, in part from memory; people taken 0.97 as tall. How often each place is touched is common practice and judgment. Hanley and McNeil (1982), from memory.',
  input,
  output: z.strictObject({
    surfaces: z.array(surfaceShape),
    /** Parts whose touching is not known. */
    unknown: z.array(z.string()),
    score: z
      .strictObject({
        auc: z.number().nullable(),
        aucSigma: z.number().nullable(),
        rank: z.number().nullable(),
        rankSigma: z.number().nullable(),
        /** Where there is wear at all; nowhere and everywhere alike leave no agreement to be told. */
        worn: z.enum(['nowhere', 'everywhere', 'in-places']),
        contrary: z.array(
          z.strictObject({
            part: z.string(),
            face: z.string(),
            what: z.enum(['worn where nothing touches', 'sharp where much touches']),
          }),
        ),
      })
      .nullable(),
  }),
  example: {
    form: 'side-chair',
    features: { stretchers: 'box' },
    measures: { 'seat-height': 440, 'stretcher-height': 120 },
    parts: ['front-stretcher'],
    worn: [
      {
        part: 'front-stretcher',
        grid: [
          [0, 0, 0, 0, 0.2, 0.5, 0.8, 1, 1, 0.9, 0.7, 0.6, 0.7, 0.8, 1, 1, 1, 0.8, 0.4, 0.2, 0, 0, 0, 0],
          [
            0, 0, 0, 0, 0, 0.1, 0.3, 0.4, 0.4, 0.3, 0.2, 0.1, 0.2, 0.3, 0.4, 0.5, 0.4, 0.2, 0.1, 0, 0, 0, 0,
            0,
          ],
          [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
          [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
        ],
      },
    ],
  },
  run: (asked, context) => {
    const found = partsFor(asked, context);
    if (!found.ok) return found;
    const { surfaces, unknown } = contactsOf(found.output.parts, found.output.sizes);
    const numbered = surfaces.map((each) => ({
      ...each,
      surface: surfaces.filter(({ part }) => part === each.part).indexOf(each),
    }));
    const painted = paintedSurfaces(asked, numbered);
    if (!painted.ok) return painted;
    return { ok: true, output: { surfaces: numbered, unknown, score: scored(painted.output) } };
  },
});

type Numbered = Surface & { surface: number };
type Painted = { surface: Numbered; worn: number[][] };

function scored(painted: readonly Painted[]) {
  if (painted.length === 0) return null;
  const touched = painted.flatMap(({ surface }) =>
    surface.grid.flat().map((each) => (each * surface.per100Uses) / 100),
  );
  const worn = painted.flatMap((each) => each.worn.flat());
  const held = agreement(touched, worn);
  const isBare = worn.every((each) => each === 0);
  return {
    auc: held?.auc ?? null,
    aucSigma: held?.aucSigma ?? null,
    rank: held?.rank ?? null,
    rankSigma: held?.rankSigma ?? null,
    worn: isBare
      ? ('nowhere' as const)
      : held === undefined
        ? ('everywhere' as const)
        : ('in-places' as const),
    contrary: painted.flatMap(({ surface, worn }) => contraryPlaces(surface, worn)),
  };
}

function partsFor(
  asked: Input,
  { knowledge }: CalculationContext,
): CalculationResult<{ parts: { part: string; kind: string }[]; sizes: Record<string, number> }> {
  const form = knowledge.forms[asked.form];
  if (form === undefined) {
    const known = Object.keys(knowledge.forms).sort().join(', ');
    return refuse('wear.form-unknown', `There is no form “${asked.form}”: take one of ${known}.`, 'form');
  }
  const parts = partsOf(form, asked.features).map(({ id, kind }) => ({ part: id, kind }));
  const missing = asked.parts?.findIndex((id) => parts.every(({ part }) => part !== id)) ?? -1;
  if (missing >= 0) {
    const message = `This ${form.name.toLowerCase()} has no part “${asked.parts?.[missing]}” with these features: take one of ${parts.map(({ part }) => part).join(', ')}.`;
    return refuse('wear.part-unknown', message, `parts[${missing}]`);
  }
  return {
    ok: true,
    output: {
      parts: parts.filter(({ part }) => asked.parts === undefined || asked.parts.includes(part)),
      sizes: { ...usualSizes(form, asked.features), ...asked.measures },
    },
  };
}

function paintedSurfaces({ worn = [] }: Input, surfaces: readonly Numbered[]): CalculationResult<Painted[]> {
  const faults: Fault[] = [];
  const painted = worn.flatMap((each, index): Painted[] => {
    const surface = surfaces.find(({ part, surface }) => part === each.part && surface === each.surface);
    if (surface === undefined) {
      const known = [...new Set(surfaces.map(({ part }) => part))].join(', ');
      const message = `There is no such surface of “${each.part}” to paint: take one of ${known}.`;
      faults.push({ code: 'wear.surface-unknown', path: `worn[${index}].part`, message });
      return [];
    }
    if (each.grid.length !== surface.faces.length) {
      const message = `This surface has ${surface.faces.length} faces (${surface.faces.join(', ')}): give a row for each.`;
      faults.push({ code: 'wear.faces', path: `worn[${index}].grid`, message });
      return [];
    }
    return [{ surface, worn: each.grid }];
  });
  return faults.length > 0 ? { ok: false, faults } : { ok: true, output: painted };
}

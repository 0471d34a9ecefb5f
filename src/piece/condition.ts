import { z } from 'zod';

const words = z.string().default('');

/** How great a damage is, apart from how far it reaches and how soon something has to be done. */
export const degrees = ['negligible', 'slight', 'minor', 'moderate', 'marked', 'major', 'extreme'] as const;
export type Degree = (typeof degrees)[number];

/** What kind of trouble: to the body, to the surface, or one still to come from how it is made. */
export const damageKinds = ['physical', 'surface', 'potential'] as const;
export type DamageKind = (typeof damageKinds)[number];

export const damageOrigins = ['original', 'old-repair', 'recent', 'unknown'] as const;
export type DamageOrigin = (typeof damageOrigins)[number];

/** Words of the trade for damage, by what they are of; one's own are possible besides. @source museums’ condition glossaries, in general use */
export const damageTerms: Readonly<Record<string, readonly string[]>> = {
  'Wood and structure': [
    'check',
    'split',
    'crack',
    'break',
    'loss',
    'chip',
    'dent',
    'gouge',
    'crushing',
    'warp',
    'shrinkage gap',
    'wear',
  ],
  Joints: [
    'loose joint',
    'open joint',
    'cracked tenon',
    'failed glue line',
    'lost glue block',
    'racked frame',
    'sagged rail',
    'worn runner',
    'missing peg',
  ],
  'Veneer and inlay': [
    'lifting veneer',
    'blister',
    'veneer loss',
    'shrinkage crack in veneer',
    'sanded through',
    'replaced patch',
  ],
  Finish: [
    'crazing',
    'crackle',
    'bloom',
    'blanching',
    'ring',
    'heat mark',
    'flaking',
    'abrasion',
    'scratch',
    'wear through the finish',
    'discoloration',
    'grime',
    'deposit',
    'overpaint',
    'refinished surface',
  ],
  'Gilding and paint': [
    'lifting gilding',
    'powdering',
    'loss to gesso',
    'loss to wood',
    'bronze paint repair',
    'regilding',
    'inpainting',
  ],
  'Pests and damp': ['exit holes', 'tunneling', 'frass', 'rot', 'mold', 'rodent gnawing', 'water stain'],
  Metal: [
    'corrosion',
    'pitting',
    'verdigris',
    'replaced hardware',
    'empty holes',
    'ghost of an earlier mount',
  ],
  Upholstery: ['soiling', 'tear', 'shattered silk', 'sagging webbing', 'later show cover', 'loose stuffing'],
  Alteration: [
    'replaced part',
    'pieced end',
    'cut down',
    'lost height',
    'added carving',
    'reveneered surface',
    'reinforcement',
    'filling',
  ],
};

/** One damage: what, where, how great, whether it goes on, whose doing it is. */
export const damage = z.strictObject({
  id: z.string().min(1),
  part: z.string().min(1).optional(),
  term: words,
  kind: z.enum(damageKinds).default('physical'),
  degree: z.enum(degrees).optional(),
  /** Face and place on the part. */
  where: words,
  size: words,
  goesOn: z.enum(['yes', 'no', 'unknown']).default('unknown'),
  origin: z.enum(damageOrigins).default('unknown'),
  photos: z.array(z.string()).default([]),
  words,
});
export type Damage = z.infer<typeof damage>;

/** The condition as a whole; one word for it never stands without words of the examiner’s own. */
export const condition = z.strictObject({
  completeness: z.enum(['complete', 'incomplete', 'fragment']).optional(),
  state: z.enum(['excellent', 'good', 'fair', 'poor']).optional(),
  words,
  /** Whether it is safe to move and to use. */
  stability: words,
  /** Relative humidity and temperature on the day. */
  climate: words,
  light: words,
});
export type Condition = z.infer<typeof condition>;

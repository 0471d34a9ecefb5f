import { ask } from './askSchema.ts';
import { consumerPrices } from './consumerPrices.ts';
import { judgedAlteration, judgedMaking, judgedRenewal, judgedShop, judgedSign } from './judgedSchema.ts';
import { measurements } from './measurementSchema.ts';
import { notDrawn } from './notDrawnSchema.ts';
import { partKind } from './partKind.ts';
import { alteration, form, making, shop, sign } from './schema.ts';
import { signDrawing } from './signDrawingSchema.ts';
import { wood, woodMovement } from './woodSchema.ts';
import { work } from './workSchema.ts';

/** The kinds of entry, each with the schema it must fit. */
export const entrySchemas = {
  sign,
  alteration,
  form,
  shop,
  making,
  partKind,
  ask,
  signDrawing,
  notDrawn,
  wood,
  woodMovement,
  measurements,
  consumerPrices,
  judgedSign,
  judgedAlteration,
  judgedRenewal,
  judgedShop,
  judgedMaking,
  work,
};
export type EntryKind = keyof typeof entrySchemas;

/** How a file holds entries: one entry that is the file, or a list under a key beside some headings. */
export type FileKind = { kind: EntryKind; list?: string; headings: readonly string[] };

/**
 * What a file holds, told by where it stands in the knowledge folder.
 *
 * @param path from the knowledge folder, with forward slashes: `signs/saw-marks.yaml`
 * @returns undefined for a place that has no meaning here
 */
export function fileKind(path: string): FileKind | undefined {
  if (path === 'making.yaml') return { kind: 'making', headings: [] };
  if (path === 'part-kinds.yaml') return { kind: 'partKind', list: 'kinds', headings: [] };
  if (path === 'asks.yaml') return { kind: 'ask', list: 'asks', headings: [] };
  if (path === 'signs-not-drawn.yaml') return { kind: 'notDrawn', list: 'reasons', headings: [] };
  if (path === 'woods.yaml') return { kind: 'wood', list: 'woods', headings: [] };
  if (path === 'wood-movement.yaml') return { kind: 'woodMovement', headings: [] };
  if (path === 'consumer-prices.yaml') return { kind: 'consumerPrices', headings: [] };
  if (path === 'measurements.yaml') return { kind: 'measurements', headings: [] };
  if (/^sources(-[a-z-]+)?\.yaml$/.test(path)) return { kind: 'work', list: 'works', headings: [] };
  if (!/^[a-z]+(-[a-z]+)*\/[^/]+\.yaml$/.test(path)) return undefined;
  const folder = path.slice(0, path.indexOf('/'));
  if (folder === 'forms') return { kind: 'form', headings: [] };
  if (folder === 'shops') return { kind: 'shop', headings: [] };
  if (folder === 'signs') return { kind: 'sign', list: 'signs', headings: ['family', 'name'] };
  if (folder === 'sign-drawings') return { kind: 'signDrawing', list: 'drawings', headings: [] };
  if (folder === 'alterations') return { kind: 'alteration', list: 'alterations', headings: [] };
  if (path === 'judged-apart/renewals.yaml') return { kind: 'judgedRenewal', list: 'renewals', headings: [] };
  if (path === 'judged-apart/shops.yaml') return { kind: 'judgedShop', list: 'shops', headings: [] };
  if (path === 'judged-apart/making.yaml') return { kind: 'judgedMaking', list: 'making', headings: [] };
  if (/^judged-apart\/alterations(-[a-z]+)?\.yaml$/.test(path))
    return { kind: 'judgedAlteration', list: 'alterations', headings: [] };
  if (folder === 'judged-apart') return { kind: 'judgedSign', list: 'signs', headings: [] };
  return undefined;
}

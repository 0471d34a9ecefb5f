import { z } from 'zod';
import { consumerPrices } from '../../src/knowledge/consumerPrices.ts';
import { measurements } from '../../src/knowledge/measurementSchema.ts';
import { notDrawn } from '../../src/knowledge/notDrawnSchema.ts';
import { alteration, form, making, shop, signFile } from '../../src/knowledge/schema.ts';
import { signDrawing } from '../../src/knowledge/signDrawingSchema.ts';
import { wood, woodMovement } from '../../src/knowledge/woodSchema.ts';
import { work } from '../../src/knowledge/workSchema.ts';

/** JSON Schemas of the knowledge files, one a kind of file, for editors that complete and check as one types. */
export function editorSchemas(): Record<string, unknown> {
  const files = {
    signs: signFile,
    alterations: z.strictObject({ alterations: z.array(alteration).min(1) }),
    form,
    shop,
    making,
    'sign-drawings': z.strictObject({ drawings: z.array(signDrawing).min(1) }),
    'signs-not-drawn': z.strictObject({ reasons: z.array(notDrawn).min(1) }),
    woods: z.strictObject({ woods: z.array(wood).min(1) }),
    'wood-movement': woodMovement,
    measurements,
    'consumer-prices': consumerPrices,
    sources: z.strictObject({ works: z.array(work).min(1) }),
  };
  return Object.fromEntries(
    Object.entries(files).map(([name, schema]) => [name, z.toJSONSchema(schema, { io: 'input' })]),
  );
}

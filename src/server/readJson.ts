import type { Context } from 'hono';
import type { z } from 'zod';
import { done, type Outcome, refuse } from '../ground/fault.ts';

/** The largest body of JSON that comes in: a day's findings are a hundredth of it. */
const mostJsonBytes = 2_000_000;

/** A request's body as JSON, or what is wrong with it. Reads no further than the limit. */
export async function readJson(context: Context): Promise<Outcome<unknown>> {
  const body = context.req.raw.body;
  const chunks: Uint8Array[] = [];
  let bytes = 0;
  if (Number(context.req.header('content-length') ?? 0) > mostJsonBytes) return tooLarge();
  for await (const chunk of body ?? []) {
    bytes += chunk.byteLength;
    if (bytes > mostJsonBytes) return tooLarge();
    chunks.push(chunk);
  }
  try {
    return done(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks))));
  } catch {
    return refuse('server.not-json', 'What came is not JSON: nothing was done.');
  }
}

function tooLarge(): ReturnType<typeof refuse> {
  return refuse('server.too-large', 'What came is larger than 2 MB: hand it in by smaller parts.');
}

/** What came, read by a schema; or where it does not fit, field by field. */
export function readBody<Schema extends z.ZodType>(
  came: Outcome<unknown>,
  schema: Schema,
): Outcome<z.infer<Schema>> {
  if (!came.ok) return came;
  const read = schema.safeParse(came.value);
  if (read.success) return done(read.data);
  return {
    ok: false,
    faults: read.error.issues.map((issue) => ({
      code: 'server.bad-request',
      path: issue.path.join('.'),
      message: `${issue.message}.`,
    })),
  };
}

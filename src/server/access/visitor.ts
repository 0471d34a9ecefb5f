import type { Context } from 'hono';
import type { Device, Session } from './accessFile.ts';

/** Who asks: somebody at the computer itself, or somebody who came in over the network and is known. */
export type Visitor = { door: 'home' } | { door: 'network'; session: Session; device?: Device };

/** Who asks; undefined where no door said so, as in a test of one route. */
export function visitorOf(context: Context): Visitor | undefined {
  return (context.env as { visitor?: Visitor } | undefined)?.visitor;
}

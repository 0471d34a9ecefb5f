import type { Sign } from '../knowledge/schema.ts';

/** Every work a sign leans on. */
export function citedBy({ sources, basis, span, shows }: Sign): string[] {
  return [
    ...sources,
    ...(basis?.source === undefined ? [] : [basis.source]),
    ...(span?.source === undefined ? [] : [span.source]),
    ...Object.values(shows).flatMap((figure) => figure.source ?? []),
  ];
}

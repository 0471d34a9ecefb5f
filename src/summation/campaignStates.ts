import { campaignOf } from '../evidence/campaigns.ts';
import type { ModelPart } from '../evidence/preparedCase.ts';
import type { Layout } from './layout.ts';

/** The bound campaigns that what is seen of a part hangs on; in a fine layout, all of them. */
export function campaignsAt(
  layout: Pick<Layout, 'campaigns' | 'fine' | 'prepared'>,
  part: ModelPart,
): string[] {
  return layout.campaigns.filter(
    (kind) =>
      layout.fine || layout.prepared.looks.some((look) => look.part === part.id && campaignOf(look) === kind),
  );
}

/** The state of a part's campaigns in a cutset state of the layout: bit i stands for the i-th of them. */
export function campaignState(layout: Layout, own: readonly string[], cutsetState: number): number {
  return own.reduce(
    (bits, kind, i) =>
      layout.cutsetStates[cutsetState]?.campaigns[layout.campaigns.indexOf(kind)] === true
        ? bits | (1 << i)
        : bits,
    0,
  );
}

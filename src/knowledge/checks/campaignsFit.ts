import { soundEntries } from '../entry.ts';
import { type Check, faultIn } from './check.ts';

/** The causes of a part's own that what was done to the whole piece can lie over. */
const ofAPart = ['part-year', 'year', 'tooling', 'ageing', 'use'];

/** A sign that a campaign can leave names one that the making file knows, and hangs on a cause of the part's own. */
export const campaignsFit: Check = {
  id: 'campaigns-fit',
  protects:
    'What was done to a whole piece at one time is weighed as one event: signs of the making and of alterations are shared already.',
  find: ({ entries }) => {
    const known = new Set(
      soundEntries(entries, 'making').flatMap((entry) => Object.keys(entry.value.campaigns)),
    );
    return soundEntries(entries, 'sign').flatMap((entry) => {
      const { campaign, hangsOn } = entry.value;
      if (campaign === undefined) return [];
      const what = !known.has(campaign.kind)
        ? `making.yaml knows no campaign "${campaign.kind}".`
        : ofAPart.includes(hangsOn)
          ? undefined
          : `It hangs on ${hangsOn}, which the parts of a piece share already.`;
      if (what === undefined) return [];
      return [
        faultIn('campaigns-fit', entry, ['campaign', 'kind'], {
          what,
          mend: `Name one of ${[...known].join(', ') || 'the campaigns of making.yaml'} on a sign that hangs on ${ofAPart.join(', ')}; or leave it out.`,
          example: 'campaign: { kind: reglued, shows: "55, 35–72" }',
        }),
      ];
    });
  },
};

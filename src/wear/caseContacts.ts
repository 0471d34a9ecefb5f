import { allAdults, bodyMeasures } from './bodyMeasures.ts';
import type { Contact } from './contact.ts';
import { along, even, surface, times, touches } from './surface.ts';

const hand = allAdults(bodyMeasures.handBreadth);

/** How far a drawer is drawn out at most, as a share of its depth: a judgement. */
const drawn = 0.75;

/**
 * Runners and drawers wear each other: the runner most in front, the drawer’s sides most behind.
 *
 * Method: while a drawer of depth D is drawn from 0 to S, a place x behind the front of the runner is passed by min(S, D − x) of
 * its sides, and a place y behind the front of the drawer rubs for min(S, y). As it comes out its weight tips onto the front end of the runner
 * and the hind end of its sides, which doubles the load there and falls off within a sixth of the depth.
 */
export const drawerRunner: Contact = (part, size) => {
  const lengthMm = 0.92 * size(['depth'], 520);
  return [
    surface(
      {
        ...part,
        by: 'the drawer’s sides sliding on it',
        along: { from: 'front', to: 'back', lengthMm },
        per100Uses: 100,
      },
      {
        top: along((share) => Math.min(drawn, 1 - share) * (1 + Math.exp(-share / 0.16))),
        'inner face': along((share) => 0.15 * Math.min(drawn, 1 - share)),
        underside: even(0),
      },
    ),
  ];
};

/** A drawer: its sides below, its front about the pulls, its upper edges in hand. */
export const drawer: Contact = (part, size) => {
  const deepMm = 0.92 * size(['depth'], 520);
  const wideMm = size(['width'], 980);
  const pulls = touches(
    [0.22, 0.78].map((share) => ({
      middleMm: share * wideMm,
      sdMm: 35,
      broadMm: 1.4 * hand.mean,
      weight: 1,
    })),
    wideMm,
  );
  return [
    surface(
      {
        ...part,
        by: 'sliding on the runners',
        along: { from: 'front', to: 'back', lengthMm: deepMm },
        per100Uses: 100,
      },
      {
        'lower edges of the sides': along(
          (share) => Math.min(drawn, share) * (1 + Math.exp(-(1 - share) / 0.16)),
        ),
        'upper edges of the sides': along((share) => 0.1 + 0.1 * (1 - share)),
        'bottom, at its hind edge': along((share) => (share > 0.9 ? 0.3 : 0.02)),
      },
    ),
    surface(
      {
        ...part,
        by: 'hands at the pulls',
        along: { from: 'left', to: 'right', lengthMm: wideMm },
        per100Uses: 95,
      },
      {
        front: pulls,
        'upper edge of the front': pulls.map((each) => 0.4 * each + 0.1),
        'inside of the front': times(pulls, 0.1),
      },
    ),
  ];
};

/** The top of a case or table: its front edge and corners in hand, the middle wiped. */
export const top: Contact = (part, size) => [
  surface(
    {
      ...part,
      by: 'hands, sleeves and things set down',
      along: { from: 'left', to: 'right', lengthMm: size(['width', 'diameter'], 900) },
      per100Uses: 80,
    },
    {
      'front edge': along((share) => 0.7 + 0.3 * Math.exp(-((Math.min(share, 1 - share) / 0.08) ** 2))),
      top: even(0.6),
      'back edge': even(0.1),
      underside: even(0.01),
    },
  ),
];

/** A door: its free edge and the place of its key. */
export const door: Contact = (part, size) => {
  const lengthMm = size(['door-height', 'height'], 900);
  const key = touches([{ middleMm: lengthMm / 2, sdMm: 60, broadMm: hand.mean, weight: 1 }], lengthMm);
  return [
    surface(
      {
        ...part,
        by: 'hands at the key and the free edge',
        along: { from: 'bottom', to: 'top', lengthMm },
        per100Uses: 95,
      },
      {
        'free stile': key,
        'free edge': key.map((each) => 0.7 * each + 0.1),
        'hinge stile': even(0.05),
        inside: times(key, 0.1),
      },
    ),
  ];
};

import { allAdults, bodyMeasures, shareBelow, shoeMm } from './bodyMeasures.ts';
import type { Contact } from './contact.ts';
import { along, type Band, even, surface, times, touches } from './surface.ts';

const foot = allAdults(bodyMeasures.footBreadth);
const hand = allAdults(bodyMeasures.handBreadth);
const hip = allAdults(bodyMeasures.hipBreadth);

/** Two feet or legs either side of the middle, a quarter of the hips out, scattering as people sit. */
function pair(lengthMm: number, broadMm: number): Band[] {
  return [-1, 1].map((side) => ({
    middleMm: lengthMm / 2 + (side * hip.mean) / 4,
    sdMm: 70,
    broadMm,
    weight: 1,
  }));
}

/** How many of 100 sittings set a foot on a stretcher: what lies below half of the lower leg, and more where the legs do not reach the floor. */
function feetOn(heightMm: number, seatMm: number): number {
  const inReach = 1 - shareBelow(halved, heightMm);
  const dangling = shareBelow(bodyMeasures.poplitealHeight, seatMm - shoeMm);
  return 100 * inReach * (0.2 + 0.6 * dangling);
}

const halved = {
  men: { mean: bodyMeasures.poplitealHeight.men.mean / 2, sd: bodyMeasures.poplitealHeight.men.sd / 2 },
  women: { mean: bodyMeasures.poplitealHeight.women.mean / 2, sd: bodyMeasures.poplitealHeight.women.sd / 2 },
};

/** A stretcher that runs across in front: shoes on its top, toes and heels at its front. */
export const frontStretcher: Contact = (part, size) => {
  const lengthMm =
    size(['seat-width-front', 'seat-width', 'width'], 530) - 2 * size(['leg-square', 'post-thickness'], 45);
  const shoes = touches(pair(lengthMm, foot.mean), lengthMm);
  const per100Uses = feetOn(size(['stretcher-height'], 130), size(['seat-height', 'height'], 430));
  return [
    surface(
      { ...part, by: 'shoes set on it, toes and heels', along: { ...leftRight, lengthMm }, per100Uses },
      { top: shoes, front: times(shoes, 0.35), back: times(shoes, 0.05), underside: even(0.005) },
    ),
  ];
};

/** The cross stretcher of an H, set back under the seat: only heels drawn in and feet stretched back reach it. */
export const medialStretcher: Contact = (part, size) => {
  const lengthMm =
    size(['seat-width-front', 'seat-width', 'width'], 530) - 2 * size(['leg-square', 'post-thickness'], 45);
  const heels = touches(pair(lengthMm, 0.75 * foot.mean), lengthMm);
  const per100Uses = 0.3 * feetOn(size(['stretcher-height'], 130), size(['seat-height', 'height'], 430));
  return [
    surface(
      { ...part, by: 'heels drawn in', along: { ...leftRight, lengthMm }, per100Uses },
      { top: times(heels, 0.7), front: heels, back: times(heels, 0.03), underside: even(0.005) },
    ),
  ];
};

/** A stretcher along the side: a foot hooked on it near the front, brooms along its outside. */
export const sideStretcher: Contact = (part, size) => {
  const lengthMm = size(['seat-depth', 'depth'], 420);
  const hooked = touches([{ middleMm: 0.25 * lengthMm, sdMm: 60, broadMm: foot.mean, weight: 1 }], lengthMm);
  const per100Uses = 0.15 * feetOn(size(['stretcher-height'], 130), size(['seat-height', 'height'], 430));
  return [
    surface(
      {
        ...part,
        by: 'a foot hooked on it, brooms',
        along: { from: 'front', to: 'back', lengthMm },
        per100Uses,
      },
      {
        top: hooked,
        outside: hooked.map((each) => 0.2 * each + 0.1),
        inside: times(hooked, 0.2),
        underside: even(0.01),
      },
    ),
  ];
};

/** A stretcher behind: hardly touched but by brooms. */
export const backStretcher: Contact = (part, size) => {
  const lengthMm = size(['seat-width-back', 'seat-width', 'width'], 400);
  return [
    surface(
      { ...part, by: 'brooms and other feet', along: { ...leftRight, lengthMm }, per100Uses: 2 },
      { top: even(0.4), front: even(0.2), back: even(1), underside: even(0.05) },
    ),
  ];
};

/** An arm: hands over its front end, above and with the fingers below; elbows behind, where they come down on it. */
export const arm: Contact = (part, size) => {
  const lengthMm = size(['arm-length'], 0.85 * size(['seat-depth', 'depth'], 460));
  const heightMm = size(['arm-height'], 665) - size(['seat-height'], 425);
  const reached =
    shareBelow(bodyMeasures.elbowRestHeight, heightMm + 40) *
    (1 - shareBelow(bodyMeasures.elbowRestHeight, heightMm - 80));
  const grip = touches(
    [{ middleMm: lengthMm - 0.45 * hand.mean, sdMm: 25, broadMm: hand.mean, weight: 1 }],
    lengthMm,
  );
  const elbow = touches(
    [{ middleMm: 0.35 * lengthMm, sdMm: 55, broadMm: 60, weight: 0.8 * reached }],
    lengthMm,
  );
  return [
    surface(
      {
        ...part,
        by: 'hands at its end, elbows behind',
        along: { from: 'back', to: 'front end', lengthMm },
        per100Uses: 85,
      },
      {
        top: grip.map((each, index) => each + (elbow[index] as number)),
        outside: times(grip, 0.55),
        inside: times(grip, 0.5),
        underside: times(grip, 0.45),
      },
    ),
  ];
};

/** The crest: lifted by hands at its middle and ears, leaned on, and knocked against walls behind. */
export const crestRail: Contact = (part, size) => {
  const lengthMm = size(['crest-width', 'seat-width-back', 'width'], 500);
  const highMm = size(['height'], 960) - size(['seat-height'], 430);
  const leant = 1 - shareBelow(bodyMeasures.shoulderHeightSitting, highMm - 100);
  const middle = touches([{ middleMm: lengthMm / 2, sdMm: 60, broadMm: hand.mean, weight: 1 }], lengthMm);
  const ears = along((share) => Math.exp(-((Math.min(share, 1 - share) / 0.12) ** 2)));
  const back = touches([{ middleMm: lengthMm / 2, sdMm: 50, broadMm: 260, weight: 1 }], lengthMm);
  return [
    surface(
      {
        ...part,
        by: 'hands that move it, shoulders, the wall behind',
        along: { ...leftRight, lengthMm },
        per100Uses: 70,
      },
      {
        top: middle.map((each, index) => each + 0.5 * (ears[index] as number)),
        back: middle.map((each, index) => 0.8 * each + 0.8 * (ears[index] as number)),
        front: times(back, 0.5 * leant + 0.1),
        underside: times(middle, 0.25),
      },
    ),
  ];
};

/** A splat, a slat or spindles: the sitter’s back in front. */
export const backRest: Contact = (part, size) => {
  const lengthMm = size(['splat-width', 'seat-width-back', 'seat-width'], 205);
  const back = touches(
    [{ middleMm: lengthMm / 2, sdMm: 50, broadMm: Math.min(lengthMm, 260), weight: 1 }],
    lengthMm,
  );
  return [
    surface(
      { ...part, by: 'the sitter’s back', along: { ...leftRight, lengthMm }, per100Uses: 60 },
      { front: back, edges: even(0.4), back: even(0.08) },
    ),
  ];
};

/** The front of the seat: thighs over its upper edge, calves against its face. */
export const seatFront: Contact = (part, size) => {
  const lengthMm = size(['seat-width-front', 'seat-width', 'width'], 530);
  const thighs = touches(pair(lengthMm, 130), lengthMm);
  const reaches = 1 - shareBelow(bodyMeasures.buttockPopliteal, size(['seat-depth', 'depth'], 420) + 20);
  return [
    surface(
      { ...part, by: 'thighs and calves', along: { ...leftRight, lengthMm }, per100Uses: 90 },
      { 'upper edge': thighs, front: times(thighs, 0.25 + 0.4 * (1 - reaches)), underside: even(0.02) },
    ),
  ];
};

/** The seat of a Windsor chair or a stool: the sitter over its middle, thighs over the front. */
export const seatBoard: Contact = (part, size) => {
  const lengthMm = size(['seat-width', 'seat-width-front', 'width'], 430);
  const sitter = touches([{ middleMm: lengthMm / 2, sdMm: 35, broadMm: hip.mean, weight: 1 }], lengthMm);
  return [
    surface(
      { ...part, by: 'the sitter', along: { ...leftRight, lengthMm }, per100Uses: 100 },
      { top: sitter, 'front edge': times(sitter, 0.7), sides: even(0.15), underside: even(0.01) },
    ),
  ];
};

const leftRight = { from: 'left', to: 'right' } as const;

import type { Contact } from './contact.ts';
import { along, even, surface, times } from './surface.ts';

const frontBack = { from: 'front', to: 'back' } as const;

/** What stands on the floor: its underside is dragged whole, most where the piece is tipped. */
function standing(tipped: (share: number) => number, per100Uses: number): Contact {
  return (part, size) => [
    surface(
      {
        ...part,
        by: 'the floor it is dragged over, shoes and brooms',
        along: { ...frontBack, lengthMm: size(['foot-width', 'leg-square', 'post-thickness'], 50) },
        per100Uses,
      },
      { underside: along((share) => 0.6 + 0.4 * tipped(share)), sides: even(0.3), top: even(0.02) },
    ),
  ];
}

/** Front feet are dragged when the piece is pulled up to a table. */
export const frontFoot = standing((share) => 1 - share, 95);
/** Rear feet carry a chair that is tipped back, on their hind edge. */
export const rearFoot = standing((share) => share ** 2, 95);
/** The feet of a case or table: dragged alike all over. */
export const foot = standing(() => 1, 30);

/** A leg: shoes, brooms and mops at its lower end. */
export const leg: Contact = (part, size) => {
  const lengthMm = size(['seat-height', 'height'], 430);
  const low = along((share) => Math.exp(-(share * lengthMm) / 90));
  return [
    surface(
      {
        ...part,
        by: 'shoes, brooms and mops',
        along: { from: 'floor', to: 'top', lengthMm },
        per100Uses: 25,
      },
      { front: low, outside: times(low, 0.9), inside: times(low, 0.3), back: times(low, 0.3) },
    ),
  ];
};

/** A rocker: its sole bears where it rests, a little before its middle, and hardly at the ends; it is grazed at the sides by brooms. */
export const rocker: Contact = (part, size) => {
  const atRest = along((share) => Math.exp(-(((share - 0.45) / 0.17) ** 2)));
  return [
    surface(
      {
        ...part,
        by: 'the floor it rocks on',
        along: { ...frontBack, lengthMm: size(['depth'], 750) },
        per100Uses: 100,
      },
      { underside: atRest, sides: even(0.12), top: even(0.02) },
    ),
  ];
};

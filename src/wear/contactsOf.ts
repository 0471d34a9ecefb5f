import { door, drawer, drawerRunner, top } from './caseContacts.ts';
import type { Contact, SizeOf } from './contact.ts';
import { foot, frontFoot, leg, rearFoot, rocker } from './floorContacts.ts';
import {
  arm,
  backRest,
  backStretcher,
  crestRail,
  frontStretcher,
  medialStretcher,
  seatBoard,
  seatFront,
  sideStretcher,
} from './seatContacts.ts';
import type { Surface } from './surface.ts';

/** The kinds of part whose touching is known, whatever form they stand in. */
const contacts: Readonly<Record<string, Contact>> = {
  arm,
  'arm-bow': arm,
  'back-slat': backRest,
  'back-stretcher': backStretcher,
  banister: backRest,
  'basin-top': top,
  bedpost: leg,
  crest: crestRail,
  'crest-rail': crestRail,
  door,
  drawer,
  'drawer-runner': drawerRunner,
  foot,
  'front-foot': frontFoot,
  'front-leg': leg,
  'front-rail': seatFront,
  'front-stretcher': frontStretcher,
  leg,
  lid: top,
  'medial-stretcher': medialStretcher,
  'plank-seat': seatBoard,
  'rear-foot': rearFoot,
  rocker,
  'rear-leg': leg,
  'side-stretcher': sideStretcher,
  spindle: backRest,
  splat: backRest,
  stile: leg,
  stretcher: frontStretcher,
  top,
  'tripod-leg': foot,
  'upper-door': door,
  'upper-drawer': drawer,
};

/**
 * Where use would touch a piece, part by part.
 *
 * Method: by the kind of each part, from the piece’s measures and adults’ body measures; see the files of each.
 *
 * @param parts  id and kind of each part
 * @param sizes  measures in mm by id; what is not there counts as a usual size
 * @returns the surfaces, and the parts whose touching is not known
 * @source body measures: see bodyMeasures.ts; where people set feet, hands and backs and how often: common practice and judgement
 */
export function contactsOf(
  parts: readonly { part: string; kind: string }[],
  sizes: Readonly<Record<string, number>>,
): { surfaces: Surface[]; unknown: string[] } {
  const size: SizeOf = (ids, usualMm) => ids.map((id) => sizes[id]).find((mm) => mm !== undefined) ?? usualMm;
  const known = parts.filter(({ kind }) => contacts[kind] !== undefined);
  return {
    surfaces: known.flatMap((part) => (contacts[part.kind] as Contact)(part, size)),
    unknown: parts.filter(({ kind }) => contacts[kind] === undefined).map(({ part }) => part),
  };
}

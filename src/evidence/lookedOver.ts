import type { Alteration, Sign } from '../knowledge/schema.ts';
import { expectedWords, type PieceHistory } from '../piece/observation.ts';
import type { ObservationToWeigh } from './caseToWeigh.ts';
import { figureRange } from './figures.ts';
import type { Look } from './preparedCase.ts';

/** What tells of a repair, a change or a part of another piece: then it cannot be said that none was found. */
export type TellsOfChange = { looks: readonly Look[]; observations: readonly ObservationToWeigh[] };

/** What stands against the statement that a piece was looked over for mends, later parts and changes and none was found. */
export function tellsOfChange(prepared: {
  looks: readonly Look[];
  observations: readonly ObservationToWeigh[];
  alterations: readonly Alteration[];
}): TellsOfChange {
  const telling = new Set(
    prepared.alterations.filter((each) => each.class !== 'upkeep').map((each) => `alteration/${each.id}`),
  );
  const tells = ({ sign, state }: Look) =>
    state === 'present' &&
    (telling.has(sign.hangsOn) || (sign.hangsOn === 'origin' && !isMostlyOriginal(sign)));
  return {
    looks: prepared.looks.filter(tells),
    observations: prepared.observations.filter(speaksOfChange),
  };
}

function isMostlyOriginal({ shows }: Sign): boolean {
  const best = (state: string) => {
    const figure = shows[state];
    return figure === undefined ? 0 : figureRange(figure).best;
  };
  return Object.keys(shows).every((state) => best(state) <= best('of-the-making'));
}

/** Whether an observation of the examiner's own is more to be expected of a mended, changed or married piece than of a whole one. */
function speaksOfChange({ expected }: ObservationToWeigh): boolean {
  const height = (history: PieceHistory) => expectedWords.indexOf(expected[history]);
  return (['repaired', 'altered', 'married'] as const).some((each) => height(each) > height('original'));
}

import { readingWords } from '../../src/piece/readings.ts';
import { outOf, toldShares } from '../../src/weighing/probabilityWords.ts';
import type { Weighing } from '../../src/weighing/weighing.ts';

/** Smallest change worth telling: of a probability, of a year, of a weight in decibans. */
const worthTelling = { probability: 0.01, years: 5, decibans: 1 };

/**
 * Says in words what moved between two weighings of one case: leading reading, readings, years, standings and weights.
 *
 * @returns one line a change; a single line where nothing moved by as much as a hundredth, five years or a deciban
 */
export function effectWords(was: Weighing, is: Weighing): string[] {
  const lines = [...leadingMoves(was, is), ...readingMoves(was, is), ...yearMoves(was, is)];
  lines.push(...standingMoves(was, is), ...weightMoves(was, is));
  if (was.unexplained.unexplained !== is.unexplained.unexplained)
    lines.push(
      is.unexplained.unexplained
        ? 'Now no reading explains the findings.'
        : 'Now a reading explains the findings.',
    );
  return lines.length > 0
    ? lines
    : ['Nothing moved by as much as one in a hundred, five years or one deciban.'];
}

function leadingMoves(was: Weighing, is: Weighing): string[] {
  if (was.leading === is.leading) return [];
  return [
    `Another reading leads: ${readingWords[is.leading].inSentence}; no longer ${readingWords[was.leading].inSentence}.`,
  ];
}

function readingMoves(was: Weighing, is: Weighing): string[] {
  return is.readings.flatMap((reading) => {
    const before = was.readings.find((each) => each.id === reading.id)?.probability ?? 0;
    if (Math.abs(reading.probability - before) < worthTelling.probability) return [];
    const way = reading.probability > before ? 'rose' : 'fell';
    return [
      `“${readingWords[reading.id].title}” ${way} from ${inHundred(before)} to ${inHundred(reading.probability)} in 100.`,
    ];
  });
}

function yearMoves(was: Weighing, is: Weighing): string[] {
  const moved = [0, 1].some(
    (end) => Math.abs((was.years.p90[end] ?? 0) - (is.years.p90[end] ?? 0)) >= worthTelling.years,
  );
  const span = (weighing: Weighing) => weighing.years.p90.map(Math.round).join('–');
  return moved ? [`The years (${outOf(toldShares.most)}) moved from ${span(was)} to ${span(is)}.`] : [];
}

function standingMoves(was: Weighing, is: Weighing): string[] {
  return is.parts.flatMap((part) => {
    const before = was.parts.find((each) => each.id === part.id)?.standing;
    return before === undefined || before === part.standing
      ? []
      : [`The ${part.name.toLowerCase()} now stands as ${part.standing}, no longer as ${before}.`];
  });
}

/** For a period piece against a later one: the leading reading may be another than before. */
function weightMoves(was: Weighing, is: Weighing): string[] {
  return is.weights.flatMap((weight) => {
    const before = was.weights.find((each) => each.sign === weight.sign && each.part === weight.part);
    const where = `${weight.sign}${weight.part === null ? '' : ` on ${weight.part}`}`;
    const [then, now] = [before?.periodAgainstLater.alone, weight.periodAgainstLater.alone];
    if (then === undefined) return [`${where} now carries weight: ${decibans(now)}.`];
    const moved = Math.abs((now ?? Infinity) - (then ?? Infinity));
    if (!(moved >= worthTelling.decibans)) return [];
    return [`${where} by itself moved from ${decibans(then)} to ${decibans(now)}.`];
  });
}

function inHundred(probability: number): string {
  return String(Math.round(probability * 1000) / 10);
}

function decibans(weight: number | null): string {
  if (weight === null) return 'a hard limit';
  return `${weight > 0 ? '+' : weight < 0 ? '−' : ''}${Math.round(Math.abs(weight) * 10) / 10} decibans`;
}

import { seededRandom } from '../src/ground/seededRandom.ts';
import { sum } from '../src/ground/statistics.ts';
import type { Network, Table } from '../src/inference/network.ts';

/** A network of `count` unknowns v0, v1 … in which each follows from up to two of the three before it. */
export function randomNetwork(count: number, stateCount: number, seed: number): Network {
  const next = seededRandom(seed);
  const states = Array.from({ length: stateCount }, (_, state) => `s${state}`);
  const tables = Array.from({ length: count }, (_, index): Table => {
    const near = [index - 1, index - 2, index - 3].filter((each) => each >= 0 && next() < 0.6).slice(0, 2);
    const rows = Array.from({ length: stateCount ** near.length }, () => anyRow(stateCount, next));
    return { variable: `v${index}`, given: near.map((each) => `v${each}`), rows };
  });
  return { variables: tables.map(({ variable }) => ({ id: variable, states })), tables };
}

/**
 * A network in the shape of a piece with parts: how and when it was made, each part's origin and year, and findings
 * that hang on the part's year. The figures mean nothing.
 */
export function partsNetwork(parts: number, findingsEach: number, bins: number, seed: number): Network {
  const next = seededRandom(seed);
  const years = Array.from({ length: bins }, (_, bin) => `y${bin}`);
  const makings = ['period', 'bench-copy', 'machine-copy', 'to-deceive'];
  const origins = ['of-the-making', 'repair', 'improve', 'other-old'];
  const network: { variables: Network['variables'][number][]; tables: Table[] } = {
    variables: [],
    tables: [],
  };
  const add = (id: string, states: readonly string[], given: string[], rows: number[][]) => {
    network.variables.push({ id, states });
    network.tables.push({ variable: id, given, rows });
  };
  add('making', makings, [], [anyRow(4, next)]);
  add(
    'year',
    years,
    ['making'],
    makings.map(() => anyRow(bins, next)),
  );
  for (let part = 0; part < parts; part++) {
    add(
      `origin-${part}`,
      origins,
      ['making'],
      makings.map(() => anyRow(4, next)),
    );
    const partYears = years.flatMap((_, year) =>
      origins.map((_, origin) => (origin === 0 ? certain(bins, year) : anyRow(bins, next))),
    );
    add(`part-year-${part}`, years, ['year', `origin-${part}`], partYears);
    for (let finding = 0; finding < findingsEach; finding++) {
      add(
        `finding-${part}-${finding}`,
        ['present', 'absent'],
        [`part-year-${part}`],
        years.map(() => anyRow(2, next)),
      );
    }
  }
  return network;
}

function anyRow(length: number, next: () => number): number[] {
  const raw = Array.from({ length }, () => 0.05 + next());
  const total = sum(raw);
  return raw.map((each) => each / total);
}

function certain(length: number, at: number): number[] {
  return Array.from({ length }, (_, index) => (index === at ? 1 : 0));
}

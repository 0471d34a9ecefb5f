import type { ModelPart } from '../evidence/preparedCase.ts';
import { worlds, worldsAlike } from '../evidence/worlds.ts';
import type { Classes, Layout, Scenario } from './layout.ts';

/** Where a line begins in tables that stand one after the other. */
export function lineAt(classes: Classes, table: number, classIndex: number, k: number): number {
  return (
    table * classes.size + (classes.at[classIndex] as number) + k * (classes.count[classIndex] as number)
  );
}

/** The same classes, each scenario of them its own. */
export function ownClasses(classes: Classes): Classes {
  return { ...classes, of: Int32Array.from(classes.scenarios, (_, index) => index) };
}

/** The same classes, their tables without lines for the stricter sums. */
export function plainClasses(classes: Classes): Classes {
  let size = 0;
  const at = classes.count.map((each) => {
    const here = size;
    size += each;
    return here;
  });
  return { ...classes, at, levels: classes.levels.map(() => 1), size };
}

type Grounds = Pick<Layout, 'prepared' | 'fine' | 'habits' | 'shopBins' | 'asked'>;

/** The classes of the layout's own scenarios; those for parts where the same was looked for are made once. */
export function layoutClasses(
  layout: Grounds & Pick<Layout, 'scenarios' | 'worked'>,
  parts: readonly ModelPart[],
): Classes {
  const { causes, signs } = askedOf(layout, parts);
  const name = [...causes, ...[...signs].sort()].join();
  return layout.worked.once('classes', name, () => scenarioClasses(layout, layout.scenarios, parts));
}

/** Whether tooling, aging and use were looked at on some parts, and what they were built of; and which signs of the maker's habit. */
function askedOf({ asked, fine }: Grounds, parts: readonly ModelPart[]) {
  const mine = parts.flatMap((part) => asked.get(part.id) ?? []);
  return {
    causes: [
      ...['tooling', 'ageing', 'use'].map((cause) => fine || mine.some(({ causes }) => causes.has(cause))),
      parts.some((part) => part.renewed !== undefined),
    ],
    signs: new Set(mine.flatMap((each) => [...each.habits])),
  };
}

/** The classes of scenarios for the looks of the case at some parts; in a fine layout every world and shop is its own. */
export function scenarioClasses(
  layout: Grounds,
  among: readonly Scenario[],
  parts: readonly ModelPart[],
): Classes {
  const { prepared, fine, habits, shopBins } = layout;
  const { causes, signs } = askedOf(layout, parts);
  const bits = bitsOf(habits, signs);
  const heard = prepared.shops.map((shop) => fine || shop.habits.some((habit) => signs.has(habit.sign)));
  const worldNames = worldsAlike[
    causes.reduce((sum, each, bit) => sum + (Number(each) << bit), 0)
  ] as readonly number[];
  const states = 2 ** habits.length;
  const byNumber = new Int32Array(worldNames.length * (heard.length + 1) * states).fill(-1);
  const scenarios: Scenario[] = [];
  const of = new Int32Array(among.length);
  for (let index = 0; index < among.length; index++) {
    const scenario = among[index] as Scenario;
    const shop = scenario.shop > 0 && heard[scenario.shop - 1] === true ? scenario.shop : 0;
    const number =
      ((worldNames[scenario.world] as number) * (heard.length + 1) + shop) * states +
      (scenario.habits & bits);
    if (byNumber[number] === -1) {
      byNumber[number] = scenarios.length;
      scenarios.push({ ...scenario, shop });
    }
    of[index] = byNumber[number] as number;
  }
  const bins = scenarios.map(({ world, shop }) => shopBins[world]?.[shop] ?? { first: 0, count: 0 });
  const first = Int32Array.from(bins, (each) => each.first);
  const count = Int32Array.from(bins, (each) => each.count);
  const levels = Int32Array.from(scenarios, ({ world }) => (worlds[world]?.making === 'period' ? 4 : 1));
  let size = 0;
  const at = count.map((each, index) => {
    const here = size;
    size += each * (levels[index] as number);
    return here;
  });
  return { of, scenarios, at, first, count, levels, size };
}

/** The bits of those shared habits that are among some signs. */
export function bitsOf(habits: readonly string[], signs: ReadonlySet<string> = new Set()): number {
  return habits.reduce((all, id, index) => (signs.has(id) ? all | (1 << index) : all), 0);
}

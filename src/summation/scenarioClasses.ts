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

type Grounds = Pick<Layout, 'prepared' | 'fine' | 'habits' | 'shopBins'>;

/**
 * The classes of scenarios for the looks of the case at some parts; in a fine layout every world and shop is its own.
 *
 * @param known  classes of the same scenarios made before, by what was looked at: those for alike looks are not made anew
 */
export function scenarioClasses(
  layout: Grounds,
  among: readonly Scenario[],
  parts: readonly ModelPart[],
  known?: Map<string, Classes>,
): Classes {
  const { prepared, fine, habits, shopBins } = layout;
  const ids = new Set(parts.map((part) => part.id));
  const mine = prepared.looks.filter(
    (look) => ids.has(look.part) && !look.sign.hangsOn.startsWith('alteration/'),
  );
  const asks = (cause: string) => fine || mine.some((look) => look.sign.hangsOn === cause);
  const [tooling, ageing, use] = [asks('tooling'), asks('ageing'), asks('use')];
  const habitSigns = new Set(
    mine.filter((look) => look.sign.hangsOn === 'making').map((look) => look.sign.id),
  );
  const stock = parts.some((part) => part.renewed !== undefined);
  const name = [tooling, ageing, use, stock, ...[...habitSigns].sort()].join();
  const before = known?.get(name);
  if (before !== undefined) return before;
  const bits = bitsOf(habits, habitSigns);
  const heard = prepared.shops.map((shop) => fine || shop.habits.some((habit) => habitSigns.has(habit.sign)));
  const worldNames = worldsAlike[
    Number(tooling) + 2 * Number(ageing) + 4 * Number(use) + 8 * Number(stock)
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
  const made = { of, scenarios, at, first, count, levels, size };
  known?.set(name, made);
  return made;
}

/** The bits of those shared habits that are among some signs. */
export function bitsOf(habits: readonly string[], signs: ReadonlySet<string>): number {
  return habits.reduce((all, id, index) => (signs.has(id) ? all | (1 << index) : all), 0);
}

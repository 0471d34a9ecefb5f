import type { Layout } from './layout.ts';
import type { Column } from './partContext.ts';
import type { ModelPart } from './prepareCase.ts';
import { type World, worlds } from './worlds.ts';

/**
 * Columns alike in everything the looks at some parts depend on, put in one class: what is summed for one of them holds
 * for all. `of[column]` is the class and `columns[class]` stands for it.
 *
 * A table over classes holds, for each, one line after another for its strictnesses (four for period work, else one), each
 * as long as the bins in which it can have been made (`count` from `first` on): line k begins at `at[class] + k · count[class]`, and a
 * table is `size` long.
 */
export type Classes = {
  of: Int32Array;
  columns: Column[];
  at: Int32Array;
  first: Int32Array;
  count: Int32Array;
  levels: Int32Array;
  size: number;
};

/** Where a line begins in tables that stand one after the other. */
export function lineAt(classes: Classes, table: number, classIndex: number, k: number): number {
  return (
    table * classes.size + (classes.at[classIndex] as number) + k * (classes.count[classIndex] as number)
  );
}

type Grounds = Pick<Layout, 'prepared' | 'fine' | 'habits' | 'shopBins'>;

/** The classes of columns for the looks of the case at some parts; in a fine layout every world and shop is its own. */
export function columnClasses(
  layout: Grounds,
  among: readonly Column[],
  parts: readonly ModelPart[],
): Classes {
  const { prepared, fine, habits, shopBins } = layout;
  const mine = prepared.looks.filter(
    (look) => !look.sign.hangsOn.startsWith('alteration/') && parts.some((part) => part.id === look.part),
  );
  const asks = (cause: string) => fine || mine.some((look) => look.sign.hangsOn === cause);
  const [tooling, ageing, use] = [asks('tooling'), asks('ageing'), asks('use')];
  const habitSigns = new Set(
    mine.filter((look) => look.sign.hangsOn === 'making').map((look) => look.sign.id),
  );
  const bits = bitsOf(habits, habitSigns);
  const heard = prepared.shops.map((shop) => fine || shop.habits.some((habit) => habitSigns.has(habit.sign)));
  const ways = (ask: boolean, way: (world: World) => string) => {
    const all = [...new Set(worlds.map(way))];
    return worlds.map((world) => (ask ? all.indexOf(way(world)) : 0));
  };
  const waysOf = [
    ways(true, (world) => world.making),
    ways(tooling, (world) => world.tooling),
    ways(ageing, (world) => world.ageing),
    ways(use, (world) => world.use),
  ];
  // Worlds that these looks do not tell apart have one number.
  const names = new Map<string, number>();
  const worldNames = worlds.map((_, w) => {
    const name = waysOf.map((way) => way[w]).join();
    const number = names.get(name) ?? names.size;
    names.set(name, number);
    return number;
  });
  const states = 2 ** habits.length;
  const byNumber = new Int32Array(worldNames.length * (heard.length + 1) * states).fill(-1);
  const columns: Column[] = [];
  const of = new Int32Array(among.length);
  for (let index = 0; index < among.length; index++) {
    const column = among[index] as Column;
    const shop = column.shop > 0 && heard[column.shop - 1] === true ? column.shop : 0;
    const number =
      ((worldNames[column.world] as number) * (heard.length + 1) + shop) * states + (column.habits & bits);
    if (byNumber[number] === -1) {
      byNumber[number] = columns.length;
      columns.push({ ...column, shop });
    }
    of[index] = byNumber[number] as number;
  }
  const bins = columns.map(({ world, shop }) => shopBins[world]?.[shop] ?? { first: 0, count: 0 });
  const first = Int32Array.from(bins, (each) => each.first);
  const count = Int32Array.from(bins, (each) => each.count);
  const levels = Int32Array.from(columns, ({ world }) => (worlds[world]?.making === 'period' ? 4 : 1));
  let size = 0;
  const at = count.map((each, index) => {
    const here = size;
    size += each * (levels[index] as number);
    return here;
  });
  return { of, columns, at, first, count, levels, size };
}

/** The bits of those shared habits that are among some signs. */
export function bitsOf(habits: readonly string[], signs: ReadonlySet<string>): number {
  return habits.reduce((all, id, index) => (signs.has(id) ? all | (1 << index) : all), 0);
}

import type { Layout, Unit } from './model.ts';
import type { Column } from './partTable.ts';
import type { Look } from './prepareCase.ts';
import { worlds } from './worlds.ts';

/**
 * Columns alike in everything a unit's looks depend on, put in one class: what is summed for one of them holds for all.
 * `of[column]` is the class; `columns[class]` stands for it and is the column of index `firstColumns[class]`.
 */
export type Classes = { key: string; of: Int32Array; columns: Column[]; firstColumns: number[] };

/** The classes of the columns for a unit and the looks at it; kept in the layout, which is theirs. */
export function columnClasses(layout: Layout, unit: Unit, looks: readonly Look[]): Classes {
  const mine = looks.filter(
    (look) =>
      !look.sign.hangsOn.startsWith('alteration/') && unit.parts.some((part) => part.id === look.part),
  );
  const asks = (cause: string) => mine.some((look) => look.sign.hangsOn === cause);
  const [tooling, ageing, use] = [asks('tooling'), asks('ageing'), asks('use')];
  const habitSigns = [
    ...new Set(mine.filter((look) => look.sign.hangsOn === 'making').map((look) => look.sign.id)),
  ];
  const key = `${tooling} ${ageing} ${use} ${habitSigns.join(' ')}`;
  const known = layout.classes.get(key);
  if (known !== undefined) return known;
  const bits = habitSigns.reduce(
    (all, id) => (layout.habits.includes(id) ? all | (1 << layout.habits.indexOf(id)) : all),
    0,
  );
  const heard = layout.prepared.shops.map((shop) =>
    shop.habits.some((habit) => habitSigns.includes(habit.sign)),
  );
  const names = new Map<string, number>();
  const columns: Column[] = [];
  const firstColumns: number[] = [];
  const of = Int32Array.from(layout.columns, (column, index) => {
    const world = worlds[column.world];
    const shop = column.shop > 0 && heard[column.shop - 1] === true ? column.shop : 0;
    const name = `${world?.making} ${tooling && world?.tooling} ${ageing && world?.ageing} ${use && world?.use} ${shop} ${column.habits & bits}`;
    const before = names.get(name);
    if (before !== undefined) return before;
    names.set(name, columns.length);
    columns.push(column);
    firstColumns.push(index);
    return columns.length - 1;
  });
  const classes = { key, of, columns, firstColumns };
  layout.classes.set(key, classes);
  return classes;
}

import type { ModelPart } from '../evidence/preparedCase.ts';
import { makings, worlds } from '../evidence/worlds.ts';
import { campaignsAt } from './campaignStates.ts';
import { changeSteps } from './changeSteps.ts';
import { bitsOf, columnClasses, ownClasses, plainClasses } from './columnClasses.ts';
import { subsetsOf } from './groupPlan.ts';
import { groupOf } from './habitGroups.ts';
import type { Classes, Column, UnitShape, Voices } from './layout.ts';
import { allowedAt, type Layout, strictnesses, type Unit } from './layout.ts';
import { voiceTrees } from './voiceTrees.ts';

/**
 * The shape of a unit for the looks of the case.
 *
 * @param also  a part to tell apart though nothing was looked for on it
 */
export function unitShape(layout: Layout, unitIndex: number, also?: string): UnitShape {
  const unit = layout.units[unitIndex] as Unit;
  const { looks } = layout.prepared;
  const isAsked = (part: ModelPart) =>
    looks.some((look) => look.part === part.id && !look.sign.hangsOn.startsWith('alteration/'));
  const isTold = (part: ModelPart) =>
    isAsked(part) ||
    part.id === also ||
    (part.structural &&
      unit.alterations.some((each) => allowedAt(each, 3) && each.changes[part.kind] !== undefined));
  const stranger = also !== undefined && !unit.parts.some((part) => part.id === also && isAsked(part));
  const key = stranger ? `${unitIndex} ${also}` : `${unitIndex}`;
  return layout.worked.once('shape', key, () =>
    makeShape(layout, unitIndex, unit, unit.parts.filter(isTold)),
  );
}

function makeShape(layout: Layout, unitIndex: number, unit: Unit, told: readonly ModelPart[]): UnitShape {
  const group = groupOf(layout, unitIndex);
  // The columns of a unit by itself are classed by its own looks already.
  const classes =
    group.units.length === 1 && group.states === 1
      ? ownClasses(group.classes)
      : columnClasses(layout, group.columns, unit.parts);
  const ranked = told
    .map((part) => ({ part, voices: voicesOf(layout, classes, part) }))
    .sort((a, b) => b.voices.columns.length - a.voices.columns.length);
  const voiced = ranked.filter(({ voices }) => voices.columns.length > 1).length;
  const parts = ranked.map((each) => each.part);
  const voices = ranked.map((each) => each.voices);
  const touching = layout.makeUps.map((each) =>
    unit.parts.some((part) => each.changes[part.kind] !== undefined),
  );
  // By all its parts, told or not, so that a unit has the same configs whatever is asked of it.
  const own = new Set(unit.parts.flatMap((part) => campaignsAt(layout, part)));
  const configs: number[] = [];
  const names = new Map<string, number>();
  const configOf = Int32Array.from(layout.configs, ({ happened, campaigns }, m) => {
    // What matters of a config to this unit are the make-ups that touch it; the first of a name has no others.
    const name = [
      ...happened.filter((_, a) => touching[a] === true),
      ...campaigns.filter((_, i) => own.has(layout.campaigns[i] as string)),
    ].join();
    const before = names.get(name);
    if (before !== undefined) return before;
    names.set(name, configs.length);
    configs.push(m);
    return configs.length - 1;
  });
  const masks = unit.alterations.map((each) =>
    parts.reduce((all, part, p) => (each.changes[part.kind] === undefined ? all : all | (1 << p)), 0),
  );
  return {
    unitIndex,
    unit,
    parts,
    voiced,
    idle: unit.parts.filter((part) => part.structural && !told.includes(part)),
    classes,
    plain: plainClasses(classes),
    voices,
    trees: voiceTrees(layout, classes, voices.slice(0, voiced)),
    masks,
    steps: changeSteps(layout, unit.alterations, masks, parts),
    live: strictnesses.map((_, k) => {
      const reach = unit.alterations.reduce(
        (all, each, a) => (allowedAt(each, k) ? all | (masks[a] as number) : all),
        0,
      );
      return Array.from({ length: parts.length + 1 }, (_, p) =>
        Int32Array.from(subsetsOf(reach & (2 ** p - 1))),
      );
    }),
    configOf,
    configs,
    same: strictnesses.map(
      (_, k) =>
        k > 0 &&
        unit.alterations.every((each) => allowedAt(each, k) === allowedAt(each, k - 1)) &&
        (k < 3 || unit.parts.every((part) => !part.structural)),
    ),
  };
}

function voicesOf(layout: Layout, classes: Classes, part: ModelPart): Voices {
  const { fine, habits, prepared } = layout;
  const signs = new Set(
    prepared.looks
      .filter((look) => look.part === part.id && look.sign.hangsOn === 'making')
      .map((look) => look.sign.id),
  );
  const silent = signs.size === 0 && !fine;
  const bits = bitsOf(habits, signs);
  const heard = prepared.shops.map(
    (shop) =>
      fine ||
      shop.habits.some(
        ({ sign, on }) =>
          signs.has(sign) && (on === undefined || on.includes(part.kind) || habits.includes(sign)),
      ),
  );
  const makingOf = worlds.map((world) => makings.indexOf(world.making));
  const states = 2 ** habits.length;
  const byNumber = new Int32Array((heard.length + 1) * makings.length * states).fill(-1);
  const columns: Column[] = [];
  const of = new Int32Array(classes.columns.length);
  for (let index = 0; index < of.length; index++) {
    const column = classes.columns[index] as Column;
    const shop = heard[column.shop - 1] === true ? column.shop : 0;
    const made = shop * makings.length + (makingOf[column.world] as number);
    const number = silent ? 0 : made * states + (column.habits & bits);
    if (byNumber[number] === -1) {
      byNumber[number] = columns.length;
      columns.push(column);
    }
    of[index] = byNumber[number] as number;
  }
  return { of, columns };
}

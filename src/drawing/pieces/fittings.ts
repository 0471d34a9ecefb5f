import type { Stroke, StrokeKind } from '../../knowledge/signDrawingSchema.ts';
import { box, ellipse } from './faces.ts';
import { evenly, short, unevenness } from './unevenness.ts';

/** A row of dovetail pins seen on the side: narrow at the front, wide at the baseline, no two quite alike. */
export function pins([
  x = 0,
  y = 0,
  height = 0,
  count = 4,
  depth = 10,
  narrow = 2,
  wide = 4,
]: readonly number[]): Stroke[] {
  const at = unevenness(x + y * 3 + count);
  const d = evenly(y, height, count).map((middle) => {
    const center = middle + (at() - 0.5) * (height / count) * 0.25;
    const [front, back] = [narrow / 2, (wide / 2) * (0.9 + 0.2 * at())];
    return `M ${short(x)} ${short(center - front)} L ${short(x + depth)} ${short(center - back)} V ${short(center + back)} L ${short(x)} ${short(center + front)} Z`;
  });
  return [{ as: 'end', d: d.join(' ') }];
}

/** The head of a slotted screw, from above. */
export function screwHead(x: number, y: number, radius: number): Stroke[] {
  const half = radius * 0.75;
  return [
    { as: 'metal', d: ellipse(x, y, radius) },
    {
      as: 'line',
      d: `M ${short(x - half)} ${short(y + half * 0.5)} L ${short(x + half)} ${short(y - half * 0.5)}`,
    },
  ];
}

/** The head of a screw with a cross-shaped recess, from above. */
export function crossHead(x: number, y: number, radius: number): Stroke[] {
  const [long, thick] = [radius * 0.6, radius * 0.2];
  const arm = `h ${short(2 * thick)} v ${short(long - thick)} h ${short(long - thick)} v ${short(2 * thick)} h ${short(thick - long)} v ${short(long - thick)} h ${short(-2 * thick)} v ${short(thick - long)} h ${short(thick - long)} v ${short(-2 * thick)} h ${short(long - thick)} Z`;
  return [
    { as: 'metal', d: ellipse(x, y, radius) },
    { as: 'gap', d: `M ${short(x - thick)} ${short(y - long)} ${arm}` },
  ];
}

/** A bail hung from two posts, by its middle between the posts. */
export function bail(x: number, y: number, width: number): Stroke[] {
  const half = width / 2;
  const thick = width * 0.06;
  return [
    {
      as: 'metal',
      d: `M ${short(x - half)} ${short(y)} C ${short(x - half)} ${short(y + half * 1.1)} ${short(x + half)} ${short(y + half * 1.1)} ${short(x + half)} ${short(y)} L ${short(x + half - thick)} ${short(y)} C ${short(x + half - thick)} ${short(y + half * 0.92)} ${short(x - half + thick)} ${short(y + half * 0.92)} ${short(x - half + thick)} ${short(y)} Z`,
    },
    { as: 'metal', d: `${ellipse(x - half, y, thick * 1.4)} ${ellipse(x + half, y, thick * 1.4)}` },
  ];
}

/** A pierced-outline back plate of bat shape, by the middle between its posts. */
export function plate(face: StrokeKind, x: number, y: number, width: number): Stroke[] {
  const u = width / 20;
  const at = (dx: number, dy: number) => `${short(x + dx * u)} ${short(y + dy * u)}`;
  return [
    {
      as: face,
      d: `M ${at(-10, 0)} Q ${at(-9, -5)} ${at(-5, -4)} Q ${at(-3, -8)} ${at(0, -8)} Q ${at(3, -8)} ${at(5, -4)} Q ${at(9, -5)} ${at(10, 0)} Q ${at(9, 4)} ${at(5, 4)} Q ${at(3, 7)} ${at(0, 8)} Q ${at(-3, 7)} ${at(-5, 4)} Q ${at(-9, 4)} ${at(-10, 0)} Z`,
    },
  ];
}

/** A keyhole, by the middle of its round. */
export function keyhole(x: number, y: number, height: number): Stroke[] {
  const r = height * 0.28;
  return [
    {
      as: 'gap',
      d: `M ${short(x - r * 0.5)} ${short(y + r * 0.85)} A ${short(r)} ${short(r)} 0 1 1 ${short(x + r * 0.5)} ${short(y + r * 0.85)} L ${short(x + r * 0.75)} ${short(y + height - r)} H ${short(x - r * 0.75)} Z`,
    },
  ];
}

/** A butt hinge laid open: two leaves, the knuckle between them, three holes in each leaf. */
export function hinge(face: StrokeKind, x: number, y: number, width: number, height: number): Stroke[] {
  const knuckle = width * 0.14;
  const middle = x + width / 2;
  const rows = evenly(y, height, 3);
  const turns = evenly(y, height, 5).slice(0, -1);
  return [
    { as: face, d: box(x, y, width, height) },
    { as: face, d: box(middle - knuckle / 2, y, knuckle, height) },
    {
      as: 'line',
      d: turns
        .map((each) => `M ${short(middle - knuckle / 2)} ${short(each + height / 10)} h ${short(knuckle)}`)
        .join(' '),
    },
    {
      as: 'gap',
      d: rows
        .flatMap((each, index) => {
          const aside = index === 1 ? 0.13 : 0.25;
          return [
            ellipse(x + width * aside, each, width * 0.035),
            ellipse(x + width * (1 - aside), each, width * 0.035),
          ];
        })
        .join(' '),
    },
  ];
}

/** A caster from the side: the cup, the horn and the wheel, by the middle of the wheel. */
export function caster(face: StrokeKind, x: number, y: number, radius: number): Stroke[] {
  const r = radius;
  const up = (dx: number, dy: number) => `${short(x + dx * r)} ${short(y + dy * r)}`;
  return [
    { as: face, d: ellipse(x, y, r) },
    {
      as: 'metal',
      d: `M ${up(0.3, -2.2)} H ${short(x + 1.5 * r)} L ${up(1.3, -1.6)} C ${up(1.2, -0.9)} ${up(0.6, -0.5)} ${up(0.3, 0.2)} H ${short(x - 0.3 * r)} C ${up(-0.3, -0.7)} ${up(0.3, -1.2)} ${up(0.5, -1.6)} Z`,
    },
    {
      as: 'metal',
      d: `M ${up(-0.1, -3.6)} H ${short(x + 1.9 * r)} L ${up(1.5, -2.2)} H ${short(x + 0.3 * r)} Z`,
    },
    { as: 'metal', d: ellipse(x, y, r * 0.2) },
  ];
}

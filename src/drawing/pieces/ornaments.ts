import type { Stroke, StrokeKind } from '../../knowledge/signDrawingSchema.ts';
import { ellipse } from './faces.ts';
import { evenly, short } from './unevenness.ts';

/** A leaf with a midrib and veins, its tip up, by the upper left corner of what it fills. */
export function leaf(face: StrokeKind, [x = 0, y = 0, width = 12, height = 24]: readonly number[]): Stroke[] {
  const at = (across: number, down: number) => `${short(x + width * across)} ${short(y + height * down)}`;
  const veins = [0.32, 0.5, 0.68].map(
    (down) =>
      `M ${at(0.5, down + 0.08)} L ${at(0.22, down - 0.04)} M ${at(0.5, down + 0.08)} L ${at(0.78, down - 0.04)}`,
  );
  return [
    {
      as: face,
      d: `M ${at(0.5, 0)} Q ${at(0.72, 0.12)} ${at(0.8, 0.28)} Q ${at(1.02, 0.4)} ${at(0.94, 0.56)} Q ${at(0.98, 0.8)} ${at(0.58, 0.9)} L ${at(0.54, 1)} H ${short(x + width * 0.46)} L ${at(0.42, 0.9)} Q ${at(0.02, 0.8)} ${at(0.06, 0.56)} Q ${at(-0.02, 0.4)} ${at(0.2, 0.28)} Q ${at(0.28, 0.12)} ${at(0.5, 0)} Z`,
    },
    { as: 'thin', d: `M ${at(0.5, 0.1)} V ${short(y + height * 0.96)} ${veins.join(' ')}` },
  ];
}

/** A shell or fan of ribs that spreads upward, by the middle of its foot. */
export function shell(face: StrokeKind, [x = 0, y = 0, radius = 8, ribs = 5]: readonly number[]): Stroke[] {
  const place = (share: number, out: number) => {
    const angle = Math.PI * share;
    return `${short(x - radius * out * Math.cos(angle))} ${short(y - radius * out * Math.sin(angle))}`;
  };
  const lobes = Array.from(
    { length: ribs },
    (_, index) => `Q ${place((index + 0.5) / ribs, 1.16)} ${place((index + 1) / ribs, 0.94)}`,
  );
  const lines = Array.from({ length: ribs - 1 }, (_, index) => {
    const share = (index + 1) / ribs;
    return `M ${place(share, 0.2)} L ${place(share, 0.94)}`;
  });
  return [
    { as: face, d: `M ${short(x - radius * 0.94)} ${short(y)} ${lobes.join(' ')} Z` },
    { as: 'thin', d: lines.join(' ') },
  ];
}

/** A clock dial with its hour marks and two hands. */
export function dial(face: StrokeKind, [x = 0, y = 0, radius = 16]: readonly number[]): Stroke[] {
  const place = (hour: number, out: number) => {
    const angle = (Math.PI * hour) / 6;
    return `${short(x + radius * out * Math.sin(angle))} ${short(y - radius * out * Math.cos(angle))}`;
  };
  const hours = evenly(0, 12, 12).map((each) => `M ${place(each - 0.5, 0.78)} L ${place(each - 0.5, 0.93)}`);
  return [
    { as: face, d: ellipse(x, y, radius) },
    {
      as: 'line',
      d: `${hours.join(' ')} M ${place(10, 0.5)} L ${place(4, 0.08)} M ${place(2, 0.72)} L ${place(8, 0.1)}`,
    },
  ];
}

/** A ring round what is seen through a lens, or is to be looked at. */
export function lens([x = 0, y = 0, radius = 8]: readonly number[]): Stroke[] {
  return [{ as: 'mark', d: ellipse(x, y, radius) }];
}

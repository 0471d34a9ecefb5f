import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import {
  angleOfDifference,
  closingAngle,
  type OpeningEdge,
  openShare,
} from '../photo/geometry/seeThrough.ts';
import { defineCalculation } from './define.ts';

const lengthMm = z.number().positive().max(2000);

const input = z.strictObject({
  /** Of the opening at the front. */
  openingWidthMm: lengthMm,
  /** Of the wood at its edge, front to back. */
  thicknessMm: lengthMm,
  /** How far from the back the slope begins; 0 leaves the edge square. */
  chamferDepthMm: z.number().min(0).max(2000).default(0),
  /** How far the slope cuts in at the back. */
  chamferWidthMm: z.number().min(0).max(2000).default(0),
  /** The share of the opening by which the two must differ to be seen: a tenth where left out. */
  differenceShare: z.number().positive().max(1).default(0.1),
  /** Step of the curve. */
  stepDeg: z.number().min(0.5).max(30).default(5),
});

/** `edges.see-through`: see its own fields. */
export const edgesSeeThrough = defineCalculation({
  id: 'edges.see-through',
  answers:
    'How much of an opening stays open from the side, with its edges square and with their backs chamfered?',
  method:
    'Plane geometry: at an angle θ off the square of the face the line of sight is stopped by the end of the square part or by the back, so that the open share is 1 − max((thickness − chamfer depth) tan θ, ' +
    'thickness · tan θ − chamfer width, 0) / width, never below 0. The curve gives it for the square and for the chamfered edge; differsFromDeg is the least angle at which they differ by differenceShare, closesDeg ' +
    'where nothing is seen through. Straight sides and one even thickness are taken; a curved opening is reckoned at its width along the line of sight.',
  source: 'Ours: plane geometry. That a tenth of the opening is seen is a judgment.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    /** Rising in angle from 0 to beyond where both are closed, or to 85. */
    curve: z.array(z.strictObject({ angleDeg: z.number(), square: z.number(), chamfered: z.number() })),
    /** Null where they never differ so much. */
    differsFromDeg: z.number().nullable(),
    closesDeg: z.strictObject({ square: z.number(), chamfered: z.number() }),
    /** The angle at which a chamfer helps most, and how much of the opening it gives there. */
    most: z.strictObject({ angleDeg: z.number(), share: z.number() }),
  }),
  example: { openingWidthMm: 22, thicknessMm: 12, chamferDepthMm: 8, chamferWidthMm: 7 },
  run: (asked) => {
    const faults = chamferFaults(asked);
    if (faults.length > 0) return { ok: false, faults };
    const width = asked.openingWidthMm;
    const square: OpeningEdge = { thicknessMm: asked.thicknessMm, chamferDepthMm: 0, chamferWidthMm: 0 };
    const chamfered: OpeningEdge = {
      thicknessMm: asked.thicknessMm,
      chamferDepthMm: asked.chamferDepthMm,
      chamferWidthMm: asked.chamferWidthMm,
    };
    const at = (angleDeg: number) => ({
      angleDeg,
      square: openShare(width, square, radians(angleDeg)),
      chamfered: openShare(width, chamfered, radians(angleDeg)),
    });
    const closesDeg = {
      square: degrees(closingAngle(width, square)),
      chamfered: degrees(closingAngle(width, chamfered)),
    };
    const end = Math.min(85, closesDeg.chamfered + asked.stepDeg);
    const curve = Array.from({ length: Math.floor(end / asked.stepDeg) + 1 }, (_, index) =>
      at(index * asked.stepDeg),
    );
    // The gain grows until the square edge closes, or until the slope itself begins to hide: it bends nowhere else.
    const bends = [closesDeg.square, bendDeg(chamfered)].filter((angle) => angle <= 85).map(at);
    const best = bends.reduce((most, each) => (gain(each) > gain(most) ? each : most), at(0));
    const differs = angleOfDifference(width, square, chamfered, asked.differenceShare);
    return {
      ok: true,
      output: {
        curve,
        differsFromDeg: differs === undefined ? null : degrees(differs),
        closesDeg,
        most: { angleDeg: best.angleDeg, share: gain(best) },
      },
    };
  },
});

function gain({ square, chamfered }: { square: number; chamfered: number }): number {
  return chamfered - square;
}

/** Where the back, and not the end of the square part, begins to stop the sight. */
function bendDeg({ chamferDepthMm, chamferWidthMm }: OpeningEdge): number {
  return chamferDepthMm > 0 ? degrees(Math.atan(chamferWidthMm / chamferDepthMm)) : 0;
}

function chamferFaults(asked: z.infer<typeof input>): Fault[] {
  const { thicknessMm, chamferDepthMm, chamferWidthMm } = asked;
  if (chamferDepthMm > thicknessMm) {
    const message = `A chamfer ${chamferDepthMm} mm deep is deeper than the wood is thick (${thicknessMm} mm): give how far from the back it begins.`;
    return [{ code: 'edges.chamfer-too-deep', path: 'chamferDepthMm', message }];
  }
  if (chamferDepthMm > 0 !== chamferWidthMm > 0) {
    const path = chamferDepthMm > 0 ? 'chamferWidthMm' : 'chamferDepthMm';
    return [
      {
        code: 'edges.chamfer-half',
        path,
        message: 'Give both the depth and the width of the chamfer, or neither.',
      },
    ];
  }
  return [];
}

function radians(value: number): number {
  return (value * Math.PI) / 180;
}

function degrees(value: number): number {
  return (value * 180) / Math.PI;
}

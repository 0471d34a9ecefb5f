import { chamferedSplat } from './armchair/chamferedSplat.ts';
import { darkenedRail } from './armchair/darkenedRail.ts';
import { medialStretcher } from './armchair/medialStretcher.ts';
import { numerals } from './armchair/numerals.ts';
import { openDovetail } from './armchair/openDovetail.ts';
import { overall as armchairOverall } from './armchair/overall.ts';
import { pegs } from './armchair/pegs.ts';
import { piecedFoot } from './armchair/piecedFoot.ts';
import type { Scene } from './render/scene.ts';
import { carving } from './sideChair/carving.ts';
import { cornerBlock } from './sideChair/cornerBlock.ts';
import { overall as sideChairOverall } from './sideChair/overall.ts';
import { planerRipple } from './sideChair/planerRipple.ts';
import { shoe } from './sideChair/shoe.ts';
import { splatEdge } from './sideChair/splatEdge.ts';
import { stencil } from './sideChair/stencil.ts';
import { stretcher } from './sideChair/stretcher.ts';

/**
 * A plate: the example it belongs to, its file, and how its scene is set up. A scene laid out for the right-hand
 * side of a chair and wanted for the left (or the other way) is mirrored.
 */
export type DrawnPlate = { example: string; file: string; scene: () => Scene; mirrored?: boolean };

/** Every plate of the worked examples. */
export const plateList: readonly DrawnPlate[] = [
  { example: 'side-chair', file: 'overall.jpg', scene: sideChairOverall },
  { example: 'side-chair', file: 'stretcher.jpg', scene: stretcher, mirrored: true },
  { example: 'side-chair', file: 'splat-edge.jpg', scene: splatEdge },
  { example: 'side-chair', file: 'shoe.jpg', scene: shoe },
  { example: 'side-chair', file: 'planer-ripple.jpg', scene: planerRipple },
  { example: 'side-chair', file: 'corner-block.jpg', scene: cornerBlock },
  { example: 'side-chair', file: 'stencil.jpg', scene: stencil },
  { example: 'side-chair', file: 'carving.jpg', scene: carving },
  { example: 'armchair', file: 'overall.jpg', scene: armchairOverall },
  { example: 'armchair', file: 'open-dovetail.jpg', scene: openDovetail },
  { example: 'armchair', file: 'pegs.jpg', scene: pegs, mirrored: true },
  { example: 'armchair', file: 'medial-stretcher.jpg', scene: medialStretcher },
  { example: 'armchair', file: 'chamfered-splat.jpg', scene: chamferedSplat },
  { example: 'armchair', file: 'darkened-rail.jpg', scene: darkenedRail, mirrored: true },
  { example: 'armchair', file: 'numerals.jpg', scene: numerals },
  { example: 'armchair', file: 'pieced-foot.jpg', scene: piecedFoot, mirrored: true },
];

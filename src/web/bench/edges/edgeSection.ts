/** The edges of an opening in section, mm: across is x, the face is y = 0 and the back y = thickness. */
export type EdgeSection = {
  openingWidthMm: number;
  thicknessMm: number;
  chamferDepthMm: number;
  chamferWidthMm: number;
};

type Point = readonly [number, number];

/** The two pieces of wood beside an opening, as outlines: the left one and the right one, each as wide as it is drawn. */
export function woodOf(section: EdgeSection, besideMm: number): { left: Point[]; right: Point[] } {
  const { openingWidthMm: width, thicknessMm: back, chamferDepthMm: deep, chamferWidthMm: cut } = section;
  const left: Point[] = [
    [-besideMm, 0],
    [0, 0],
    [0, back - deep],
    [-cut, back],
    [-besideMm, back],
  ];
  return { left, right: left.map(([x, y]) => [width - x, y] as const) };
}

/** The band of sight that passes at an angle, from in front of the face to behind the back; undefined where nothing passes. */
export function sightOf(section: EdgeSection, angleDeg: number, beyondMm: number): Point[] | undefined {
  const { openingWidthMm, thicknessMm, chamferDepthMm, chamferWidthMm } = section;
  const slope = Math.tan((angleDeg * Math.PI) / 180);
  const hidden = Math.max((thicknessMm - chamferDepthMm) * slope, thicknessMm * slope - chamferWidthMm, 0);
  if (hidden >= openingWidthMm) return undefined;
  const [near, far] = [-beyondMm, thicknessMm + beyondMm];
  const end = openingWidthMm - hidden;
  return [
    [near * slope, near],
    [end + near * slope, near],
    [end + far * slope, far],
    [far * slope, far],
  ];
}

import { expect, it } from 'vitest';
import { dimensionsOf } from './dimensions.ts';
import { drawForm } from './drawForm.ts';
import { drawingSvg } from './drawingSvg.ts';
import { drawnIn, isHatched, isPale, type Standing, standings, standingWords } from './hatching.ts';
import { allForms } from './testing/allForms.ts';

const [chair] = await allForms();
if (chair === undefined) throw new Error('There is no form to draw.');
const [front] = drawForm(chair, {}, {}).views;
if (front === undefined) throw new Error('The form has no front view.');
const parts = [...new Set(front.shapes.map(({ part }) => part))];
const standing = Object.fromEntries(standings.map((each, i) => [parts[i] as string, each]));
const look = { names: {}, title: 'A & B', description: '<seen>' };

it('hatches each standing by a pattern of its own, and says its word at the part and in the legend', () => {
  const svg = drawingSvg(front, { ...look, standing, idPrefix: 'p7' });
  const patterns = [...svg.matchAll(/<pattern id="p7-([a-z-]+)"[^>]*>(.*?)<\/pattern>/g)];
  expect(patterns.map(([, id]) => id).sort()).toEqual(['improve', 'other-old', 'repair', 'unsure']);
  expect(new Set(patterns.map(([, , marks]) => marks)).size).toBe(patterns.length);
  for (const [part, each] of Object.entries(standing) as [string, Standing][]) {
    expect(svg).toContain(`<title>${part}: ${standingWords[each]}</title>`);
    expect(svg).toContain(`>${standingWords[each]}</text>`);
    const at = svg.indexOf(`data-part="${part}"`);
    const group = svg.slice(at, svg.indexOf('</g>', at));
    expect(group.includes(`url(#p7-${each})`), part).toBe(isHatched(each));
  }
});

it('leaves what was not looked at blank in a pale line, in the drawing and in the legend, and tones all else', () => {
  const svg = drawingSvg(front, { ...look, standing, idPrefix: 'p7' });
  for (const [part, each] of Object.entries(standing) as [string, Standing][]) {
    const at = svg.indexOf(`data-part="${part}"`);
    const group = svg.slice(at, svg.indexOf('</g>', at));
    expect(group.includes(`stroke="${drawnIn.pale}"`), part).toBe(each === 'not-looked-at');
    expect(group.includes(`fill="${drawnIn.paper}"`), part).toBe(each === 'not-looked-at');
    expect(group.includes(`fill="${drawnIn.tone}"`), part).toBe(each !== 'not-looked-at');
  }
  const swatches = svg.match(/<rect [^>]*stroke="[^>]*>/g) ?? [];
  expect(swatches).toHaveLength(standings.length);
  expect(swatches.filter((each) => each.includes(`stroke="${drawnIn.pale}"`))).toHaveLength(1);
  expect(standings.filter(isPale)).toEqual(['not-looked-at']);
});

it('keeps the box of the view where neither legend nor sizes are asked for', () => {
  const svg = drawingSvg(front, { ...look, standing, legend: false });
  expect(svg).not.toContain('<text');
  const box = /viewBox="([^"]+)"/.exec(svg)?.[1]?.split(' ').map(Number) ?? [];
  front.box.forEach((mm, i) => void expect(box[i]).toBeCloseTo(mm, 1));
});

it('keeps words from becoming marks', () => {
  const svg = drawingSvg(front, look);
  expect(svg).toContain('A &#38; B</title>');
  expect(svg).toContain('&#60;seen&#62;</desc>');
});

it('marks sizes in both units, and says which are only usual', () => {
  const taken = { height: 942.975 };
  const dimensions = dimensionsOf('front', front.extent, chair.measures, taken);
  const svg = drawingSvg(front, { ...look, dimensions });
  // 942.975 mm / 25.4 = 37.125 in exactly.
  expect(svg).toContain('>37 1/8 in (943 mm)</text>');
  expect(svg.match(/, usual<\/text>/g)).toHaveLength(dimensions.length - 1);
});

it('draws the part looked at in a heavier line', () => {
  const width = (svg: string) => Number(/data-part="crest-rail" stroke-width="([\d.]+)"/.exec(svg)?.[1]);
  const line = Number(/<g stroke="[^"]+" stroke-width="([\d.]+)"/.exec(drawingSvg(front, look))?.[1]);
  expect(width(drawingSvg(front, { ...look, highlight: 'crest-rail' }))).toBeGreaterThan(2 * line);
  expect(width(drawingSvg(front, look))).toBeNaN();
});

import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { isHatched, type Standing, standings, standingWords } from '../../drawing/hatching.ts';
import { HatchKey } from './HatchKey.tsx';
import { PieceDrawing } from './PieceDrawing.tsx';

const shape = (part: string) => ({ part, d: 'M 0 0 H 10 V 10 Z', label: [5, 5] as [number, number] });
const box = [0, 0, 100, 100] as const;
const view = { view: 'front', name: 'Front', box, extent: box, shapes: standings.map(shape) } as never;
const standing = Object.fromEntries(standings.map((each) => [each, each])) as Record<string, Standing>;
const names = Object.fromEntries(standings.map((each) => [each, `part ${each}`]));
const shown = { pale: 'data-pale=""', hatch: 'fill:url(#' };

describe('the drawing on the screen and its key', () => {
  const drawn = renderToStaticMarkup(<PieceDrawing view={view} names={names} standing={standing} />);
  const key = renderToStaticMarkup(<HatchKey shown={standings} />);

  it.each(standings)('show %s alike', (each) => {
    const part = drawn.slice(drawn.indexOf(`data-part="${each}"`)).split('</g>')[0] ?? '';
    const line = key.split('<li>').find((item) => item.includes(`<span>${standingWords[each]} `)) ?? '';
    for (const at of [part, line]) {
      expect(at.includes(shown.pale)).toBe(each === 'not-looked-at');
      expect(at.includes(shown.hatch)).toBe(isHatched(each));
    }
  });

  it('say to who can’t see it which parts were not looked at', () => {
    expect(/<desc[^>]*>([^<]*)/.exec(drawn)?.[1]).toContain('not looked at: part not-looked-at.');
  });
});

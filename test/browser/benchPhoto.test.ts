import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mapped } from '../../src/photo/geometry/homography.ts';
import { scaleCard } from '../../src/photo/geometry/scaleCard.ts';
import { type CardView, photographedCard } from '../kits/photographedCard.ts';
import { printedCard } from '../kits/printedCard.ts';
import { drawn } from '../kits/surfaces/drawn.ts';
import { axeViolations } from './support/axeViolations.ts';
import { copyExample } from './support/copyExample.ts';
import { openBrowser } from './support/openBrowser.ts';
import { pieceOf } from './support/pieceOf.ts';
import { startServer, type TestServer } from './support/startServer.ts';

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

type Place = readonly [number, number];

/** A camera of the test’s own: a plane in millimetres, turned away from it, seen in a picture of 3000 by 2000 pixels. */
const seen = ([x, y]: Place): Place => {
  const [tilt, spin, far, focal] = [0.5, 0.12, 1400, 2600];
  const [u, v] = [x - 300, y - 200];
  const [a, b] = [u * Math.cos(spin) - v * Math.sin(spin), u * Math.sin(spin) + v * Math.cos(spin)];
  const depth = far + a * Math.sin(tilt);
  return [1500 + (focal * a * Math.cos(tilt)) / depth, 1000 + (focal * b) / depth];
};

/** A rectangle of 600 by 400 mm, and within it a bar from end to end of 352.4 mm. */
const rectangle: Place[] = [
  [0, 0],
  [600, 0],
  [600, 400],
  [0, 400],
];
const bar: [Place, Place] = [
  [110, 80],
  [110 + 352.4 * Math.cos(0.6), 80 + 352.4 * Math.sin(0.6)],
];

async function perspectivePicture(): Promise<Buffer> {
  const path = (places: readonly Place[]) =>
    places
      .map(seen)
      .map(([x, y]) => `${x + 0.5},${y + 0.5}`)
      .join(' ');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="3000" height="2000"><rect width="3000" height="2000" fill="#b9a183"/>
    <polygon points="${path(rectangle)}" fill="#e9dfcc" stroke="#222" stroke-width="2"/>
    <polyline points="${path(bar)}" stroke="#4a2d16" stroke-width="5" fill="none"/></svg>`;
  return sharp(Buffer.from(svg)).jpeg({ quality: 92 }).toBuffer();
}

async function openTool(page: Page, tool: string, name: string, buffer: Buffer): Promise<string> {
  const id = await copyExample(server, 'example-side-chair');
  await page.goto(`${server.address}piece/${id}/bench#${tool}`);
  await page
    .getByLabel('Or open a file, without adding it to the piece')
    .setInputFiles({ name, mimeType: 'image/jpeg', buffer });
  await page.getByRole('application').waitFor({ timeout: 60_000 });
  return id;
}

/** Sets a point by keys alone: the cross starts in the middle of the picture or where it was left. */
async function setByKeys(page: Page, from: Place, to: Place): Promise<Place> {
  const at: [number, number] = [from[0], from[1]];
  for (const axis of [0, 1] as const) {
    const forward = axis === 0 ? 'ArrowRight' : 'ArrowDown';
    const back = axis === 0 ? 'ArrowLeft' : 'ArrowUp';
    for (const [modifier, step] of [
      ['Alt+', 100],
      ['Shift+', 10],
      ['', 1],
    ] as const) {
      while (Math.abs(to[axis] - at[axis]) > step / 2) {
        const sign = Math.sign(to[axis] - at[axis]);
        await page.keyboard.press(modifier + (sign > 0 ? forward : back));
        at[axis] += sign * step;
      }
    }
  }
  await page.keyboard.press('Enter');
  return at;
}

describe('measuring in a photo', () => {
  it('gets a length in a tilted plane within its stated uncertainty, by mouse and keys, and keeps it', async () => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    const page = await context.newPage();
    const refused: string[] = [];
    page.on('console', (message) => {
      if (/Content Security Policy|Refused to/.test(message.text())) refused.push(message.text());
    });
    page.on('pageerror', (error) => refused.push(error.message));
    const id = await openTool(page, 'photo-measure', 'tilted.jpg', await perspectivePicture());
    await page.getByRole('radio', { name: /A rectangle/ }).check();
    await page.getByLabel('From corner 1 to corner 2').fill('600 mm');
    await page.getByLabel('From corner 2 to corner 3').fill('400 mm');

    await page.getByRole('button', { name: 'Mark the four corners' }).click();
    const board = page.getByRole('application');
    await board.scrollIntoViewIfNeeded();
    const box = await board.boundingBox();
    if (box === null) throw new Error('The board is not on the screen.');
    const scale = Math.min(box.width / 3000, box.height / 2000);
    const inFrame = ([x, y]: Place): Place => [
      box.x + box.width / 2 + (x + 0.5 - 1500) * scale,
      box.y + box.height / 2 + (y + 0.5 - 1000) * scale,
    ];
    // By mouse the whole picture is shown, so that a screen pixel is several of the picture: the marks are then moved by keys.
    for (const corner of rectangle) await page.mouse.click(...inFrame(seen(corner)));
    await page.getByText('The plane is fixed').waitFor();

    await page.getByRole('button', { name: 'A length', exact: true }).click();
    await page.mouse.move(5, 5);
    const first = await setByKeys(page, [1499.5, 999.5], seen(bar[0]));
    await setByKeys(page, first, seen(bar[1]));
    const says = page.locator('.photo-list .photo-says');
    await says.waitFor();
    const words = (await says.textContent()) ?? '';
    const [mm, sigma] = lengthIn(words);
    expect(sigma).toBeGreaterThan(0.2);
    expect(sigma).toBeLessThan(8);
    expect(Math.abs(mm - 352.4)).toBeLessThan(2 * sigma);

    await page.getByRole('button', { name: 'Keep at the bench' }).click();
    const kept = await pieceOf(server, id, (piece) => Object.keys(piece.bench).length === 1);
    expect(Object.values(kept.bench)[0]).toMatchObject({ calculation: 'photo.measure' });
    await page.getByText('Record it as a measure of the piece').click();
    await page.getByLabel('Which measure').selectOption('depth');
    await page.getByRole('button', { name: 'Record the measure' }).click();
    const measured = await pieceOf(server, id, (piece) =>
      /^From tilted/.test(piece.measures.depth?.words ?? ''),
    );
    expect(Math.abs((measured.measures.depth?.mm ?? 0) - 352.4)).toBeLessThan(2 * sigma);
    expect(measured.measures.depth?.sigmaMm).toBeGreaterThan(0.2);
    expect(await axeViolations(page)).toEqual([]);
    await page.setViewportSize({ width: 360, height: 740 });
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await axeViolations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    expect(refused).toEqual([]);
    await context.close();
  }, 120_000);
});

describe('the board', () => {
  it('goes nearer under two fingers, aims under one with a loupe, takes marks back and off, and refuses a letter', async () => {
    const context = await browser.newContext({ viewport: { width: 390, height: 800 }, hasTouch: true });
    const page = await context.newPage();
    const id = await copyExample(server, 'example-side-chair');
    await page.goto(`${server.address}piece/${id}/bench#grain`);
    const file = page.getByLabel('Or open a file, without adding it to the piece');
    await file.setInputFiles({
      name: 'letter.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('A letter.'),
    });
    await page.getByText('can’t be read as a picture here: choose a JPEG').waitFor();
    await file.setInputFiles({
      name: 'tilted.jpg',
      mimeType: 'image/jpeg',
      buffer: await perspectivePicture(),
    });
    const board = page.getByRole('application');
    await board.waitFor();
    await board.scrollIntoViewIfNeeded();
    const box = await board.boundingBox();
    if (box === null) throw new Error('The board is not on the screen.');
    const [x, y] = [Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2)];
    const hand = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: Place[]) =>
      hand.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: fingers.map(([fx, fy], finger) => ({ x: fx, y: fy, id: finger })),
      });
    const shown = page.locator('.photo-shown');
    const before = (await shown.textContent()) ?? '';
    await touch('touchStart', [[x - 30, y]]);
    await touch('touchStart', [
      [x - 30, y],
      [x + 30, y],
    ]);
    for (const spread of [50, 80, 120])
      await touch('touchMove', [
        [x - spread, y],
        [x + spread, y],
      ]);
    await touch('touchEnd', []);
    const scaleOf = (words: string) => Number(/1 : ([\d.]+)/.exec(words)?.[1]);
    // From 60 pixels apart to 240: four times as near.
    expect(scaleOf(before) / scaleOf((await shown.textContent()) ?? '')).toBeGreaterThan(3.5);
    expect(scaleOf(before) / scaleOf((await shown.textContent()) ?? '')).toBeLessThan(4.5);

    await page.getByRole('button', { name: 'Mark the region' }).click();
    await board.scrollIntoViewIfNeeded();
    await touch('touchStart', [[x - 60, y - 60]]);
    await touch('touchMove', [[x - 62, y - 61]]);
    await page.locator('.photo-loupe').waitFor();
    await touch('touchEnd', []);
    await touch('touchStart', [[x + 60, y + 60]]);
    await touch('touchEnd', []);
    await page.getByText('One mark, in words').waitFor();
    await page.getByRole('button', { name: 'Delete mark' }).click();
    expect(await page.getByText('One mark, in words').count()).toBe(0);
    await page.getByRole('button', { name: 'Undo the mark' }).click();
    await page.getByText('One mark, in words').waitFor();
    await context.close();
  }, 120_000);
});

/** The card on a board, photographed aslant: where its corners truly are is known, and so how long its check line must come out. */
const cardView: CardView = {
  widthPx: 1800,
  heightPx: 1500,
  toPicture: [
    [4.1, 0.35, 420],
    [-0.4, 4.3, 260],
    [0.00012, 0.0002, 1],
  ],
  seed: 5,
};

async function cardPicture(): Promise<Buffer> {
  const { widthPx, heightPx, pixels } = photographedCard(await printedCard('a4', 300), cardView);
  return sharp(Buffer.from(pixels.buffer), { raw: { width: widthPx, height: heightPx, channels: 1 } })
    .jpeg({ quality: 92 })
    .toBuffer();
}

describe('the printed card', () => {
  it('is found by itself, and gives its own check line within the stated uncertainty', async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await openTool(page, 'photo-measure', 'card.jpg', await cardPicture());
    await page.getByRole('button', { name: 'Find the card' }).click();
    await page.getByText(/Found: \d+ corners/).waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'A length', exact: true }).click();
    await page.mouse.move(5, 5);
    const { xMm, yMm, lengthMm } = scaleCard.checkLine;
    const ends = [0, lengthMm].map((along) => mapped(cardView.toPicture, [xMm + along, yMm]).point);
    const first = await setByKeys(page, [899.5, 749.5], ends[0] as Place);
    await setByKeys(page, first, ends[1] as Place);
    const words = (await page.locator('.photo-list .photo-says').textContent()) ?? '';
    const [mm, sigma] = lengthIn(words);
    expect(sigma).toBeGreaterThan(0.1);
    expect(sigma).toBeLessThan(2);
    expect(Math.abs(mm - lengthMm)).toBeLessThan(2 * sigma);
    await page.close();
  }, 120_000);
});

/** A picture of 48 megapixels: wood-like lines on it, so that it does not compress to nothing. */
async function largePicture(): Promise<Buffer> {
  const random = drawn(48);
  const tile = Buffer.alloc(800 * 600 * 3);
  for (let y = 0; y < 600; y++)
    for (let x = 0; x < 800; x++) {
      const light = 120 + 50 * Math.sin((x + 0.2 * y) * 1.1) + 6 * random.normal();
      tile.set([light, light * 0.8, light * 0.6], (y * 800 + x) * 3);
    }
  return sharp(tile, { raw: { width: 800, height: 600, channels: 3 } })
    .resize(8000, 6000)
    .jpeg({ quality: 88 })
    .toBuffer();
}

describe('a picture of 48 megapixels', () => {
  it('opens, is looked at from near, and its grain is reckoned, while the page stays free', async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.addInitScript(() => {
      const long: number[] = [];
      Object.assign(window, { longTasks: long });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) long.push(Math.round(entry.duration));
      }).observe({ entryTypes: ['longtask'] });
    });
    // Handed over by its path: a buffer would be unpacked on the page's own thread by the test itself.
    const folder = await mkdtemp(join(tmpdir(), 'underside-large-'));
    const path = join(folder, 'large.jpg');
    await writeFile(path, await largePicture());
    const id = await copyExample(server, 'example-side-chair');
    await page.goto(`${server.address}piece/${id}/bench#grain`);
    const file = page.getByLabel('Or open a file, without adding it to the piece');
    await file.waitFor();
    await page.evaluate(() => {
      (window as unknown as { longTasks: number[] }).longTasks.length = 0;
    });
    const begun = Date.now();
    await file.setInputFiles(path);
    const board = page.getByRole('application');
    await board.waitFor({ timeout: 60_000 });
    const openedMs = Date.now() - begun;
    await page.getByText('8000 × 6000 pixels').waitFor();
    for (let near = 0; near < 6; near++) await page.getByRole('button', { name: 'Zoom in' }).click();
    await page.getByRole('button', { name: 'Mark the region' }).click();
    await board.scrollIntoViewIfNeeded();
    const box = await board.boundingBox();
    if (box === null) throw new Error('The board is not on the screen.');
    await page.mouse.move(box.x + 100, box.y + 100);
    await page.mouse.down();
    await page.mouse.move(box.x + 600, box.y + 400, { steps: 8 });
    await page.mouse.up();
    // The lines of the picture: x + 0.2 y stays the same along them, 78.7° down from the level to the left.
    await page.locator('.bench-says').waitFor({ timeout: 60_000 });
    expect(await page.locator('.bench-says').textContent()).toMatch(/runs 78\.\d° off the level, rising/);
    const long = await page.evaluate(() => (window as unknown as { longTasks: number[] }).longTasks);
    console.info(
      `48 megapixels: open after ${openedMs} ms, longest tasks of the page ${long.toSorted((a, b) => b - a).slice(0, 3)} ms`,
    );
    // Half a second would be felt by anyone; on an idle machine nothing comes near it.
    expect(Math.max(0, ...long)).toBeLessThan(500);
    await page.close();
    await rm(folder, { recursive: true });
  }, 180_000);
});

describe('grain across a band', () => {
  it('enters a finding that carries what was measured, the right way round', async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    // One board under a cuff, drawn with the program's own ring model: a single piece by construction.
    const picture = await sharp('examples/pictures/grain-cuff.png').jpeg({ quality: 98 }).toBuffer();
    const id = await openTool(page, 'grain-match', 'cuff.jpg', picture);
    const board = page.getByRole('application');
    const draw = async (button: string, from: Place, to: Place) => {
      await page.getByRole('button', { name: button, exact: true }).click();
      await board.scrollIntoViewIfNeeded();
      const box = await board.boundingBox();
      if (box === null) throw new Error('The board is not on the screen.');
      const scale = Math.min(box.width / 280, box.height / 480);
      const at = ([x, y]: Place): Place => [
        box.x + box.width / 2 + (x + 0.5 - 140) * scale,
        box.y + box.height / 2 + (y + 0.5 - 240) * scale,
      ];
      await page.mouse.click(...at(from));
      await page.mouse.click(...at(to));
    };
    await draw('Mark wood on one side', [10, 10], [269, 209]);
    await draw('Mark wood on the other side', [10, 292], [269, 461]);
    await draw('Mark the way the part runs', [140, 30], [140, 450]);
    await page.locator('.bench-says').waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    const entered = await pieceOf(server, id, (piece) =>
      Object.values(piece.findings).some(({ measured }) => measured?.calculation === 'photo.grain-match'),
    );
    const finding = Object.values(entered.findings).find(({ measured }) => measured !== undefined);
    expect(finding).toMatchObject({ sign: 'grain-runs-on-through-cuff', state: 'present' });
    const { present = 0, absent = 0 } = finding?.measured?.likelihoods ?? {};
    expect(present / absent).toBeGreaterThan(3);
    expect(finding?.measured?.input).toMatchObject({ a: { widthPx: expect.any(Number) }, file: 'cuff.jpg' });

    // The same grain, asked of a line across a leg, speaks against the sign of two pieces.
    await page.getByRole('radio', { name: 'A line or joint across a leg' }).check();
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    const both = await pieceOf(server, id, (piece) =>
      Object.values(piece.findings).some(
        ({ sign, measured }) => sign === 'leg-grain-interrupted' && measured !== undefined,
      ),
    );
    const leg = Object.values(both.findings).find(
      ({ sign, measured }) => sign === 'leg-grain-interrupted' && measured !== undefined,
    );
    expect(leg?.state).toBe('absent');
    await page.close();
  }, 120_000);
});

describe('twins', () => {
  it('finds a pair drawn from one line, one turned over, to be alike, along edges followed by themselves', async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    const leg = (x: (u: number) => number) =>
      Array.from({ length: 81 }, (_, i) => {
        const y = 100 + i * 10;
        return `${x(60 + 40 * Math.sin(i / 13) + 14 * Math.sin(i / 4))},${y}`;
      }).join(' ');
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="1200" height="1000"><rect width="1200" height="1000" fill="#efe8da"/>
      <polygon fill="#5a3a20" points="200,100 ${leg((u) => 300 + u)} 200,900"/>
      <polygon fill="#5a3a20" points="1000,100 ${leg((u) => 900 - u)} 1000,900"/></svg>`;
    await openTool(page, 'twins', 'legs.jpg', await sharp(Buffer.from(svg)).jpeg({ quality: 92 }).toBuffer());
    await page.getByLabel('How long it is').fill('600 mm');
    const board = page.getByRole('application');
    const click = async (button: string, places: Place[]) => {
      await page.getByRole('button', { name: button, exact: true }).click();
      await board.scrollIntoViewIfNeeded();
      const box = await board.boundingBox();
      if (box === null) throw new Error('The board is not on the screen.');
      const scale = Math.min(box.width / 1200, box.height / 1000);
      for (const [x, y] of places) {
        await page.mouse.click(
          box.x + box.width / 2 + (x + 0.5 - 600) * scale,
          box.y + box.height / 2 + (y + 0.5 - 500) * scale,
        );
        await page.waitForTimeout(700);
      }
    };
    await click('Mark the known length', [
      [0, 50],
      [1199, 50],
    ]);
    const edge = (x: (u: number) => number, i: number): Place => [
      x(60 + 40 * Math.sin(i / 13) + 14 * Math.sin(i / 4)),
      100 + i * 10,
    ];
    const rows = [4, 20, 36, 52, 76];
    await click(
      'Mark the first outline',
      rows.map((i) => edge((u) => 300 + u, i)),
    );
    await page.getByRole('button', { name: /^Close/ }).click();
    await click('Mark the second outline', [...rows.map((i) => edge((u) => 900 - u, i)), [1000, 500]]);
    // The last touch strayed to the far side: undo takes all of the edge back that it brought.
    await page.getByRole('button', { name: 'Undo the mark' }).click();
    await page.getByRole('button', { name: /^Close/ }).click();
    const says = (await page.locator('.bench-says').textContent()) ?? '';
    const rms = Number(/lie ([\d.]+) mm apart/.exec(says)?.[1]);
    // The lines are one line turned over; half a millimetre is one pixel of the picture.
    expect(rms).toBeLessThan(0.5);
    expect(says).toMatch(/one turned over/);
    await page.close();
  }, 120_000);
});

/** The length and its standard uncertainty in a sentence, mm. */
function lengthIn(words: string): [number, number] {
  const [, mm = 'none', sigma = 'none'] = /\(([\d.]+) mm\), give or take ([\d.]+) mm/.exec(words) ?? [];
  return [Number(mm), Number(sigma)];
}

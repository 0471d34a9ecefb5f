import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { scalePlate, scalePlates } from './scalePlate.ts';

const plain = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#8a6a4a' } });

async function jpegOf(width: number, height: number, tell?: (picture: Sharp) => Sharp): Promise<Buffer> {
  const picture = plain(width, height);
  return (tell === undefined ? picture : tell(picture)).jpeg().toBuffer();
}

describe('a plate made ready to print', () => {
  it('takes a small plain JPEG as it is', async () => {
    const bytes = await jpegOf(2048, 1000);
    const scaled = await scalePlate({ id: 'a', mediaType: 'image/jpeg', bytes });
    expect(scaled?.jpeg.equals(bytes)).toBe(true);
    expect([scaled?.widthPx, scaled?.heightPx]).toEqual([2048, 1000]);
  });

  it('makes a large one smaller, its long side 1800 pixels', async () => {
    const scaled = await scalePlate({ id: 'a', mediaType: 'image/jpeg', bytes: await jpegOf(4000, 3000) });
    expect([scaled?.widthPx, scaled?.heightPx]).toEqual([1800, 1350]);
  });

  it('leaves out what the camera wrote, the place among it', async () => {
    const bytes = await jpegOf(320, 200, (picture) =>
      picture.withExif({
        IFD0: { Copyright: 'Nobody' },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
      }),
    );
    expect((await sharp(bytes).metadata()).exif).toBeDefined();
    const scaled = await scalePlate({ id: 'a', mediaType: 'image/jpeg', bytes });
    expect((await sharp(scaled?.jpeg).metadata()).exif).toBeUndefined();
  });

  it('stands upright where the camera was turned', async () => {
    const bytes = await jpegOf(320, 200, (picture) => picture.withMetadata({ orientation: 6 }));
    const scaled = await scalePlate({ id: 'a', mediaType: 'image/jpeg', bytes });
    expect([scaled?.widthPx, scaled?.heightPx]).toEqual([200, 320]);
  });

  it('lays what can be seen through on white', async () => {
    const bytes = await sharp({ create: { width: 20, height: 20, channels: 4, background: '#00000000' } })
      .png()
      .toBuffer();
    const scaled = await scalePlate({ id: 'a', mediaType: 'image/png', bytes });
    const { channels } = await sharp(scaled?.jpeg).stats();
    expect(channels.map(({ mean }) => Math.round(mean))).toEqual([255, 255, 255]);
  });

  it('leaves out what can’t be read, and counts it as behind', async () => {
    const told: number[] = [];
    const scaled = await scalePlates(
      [
        { id: 'a', mediaType: 'image/jpeg', bytes: await jpegOf(20, 20) },
        { id: 'b', mediaType: 'image/jpeg', bytes: Buffer.from('no picture') },
        { id: 'c', mediaType: 'image/jpeg', path: '/underside-opinion-has-no-folder/c.jpg' },
      ],
      (done) => told.push(done),
    );
    expect([...scaled.keys()]).toEqual(['a']);
    expect(told).toEqual([1, 2, 3]);
  });
});

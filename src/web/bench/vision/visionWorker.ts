import library from '@techstark/opencv-js';
import { expose } from 'comlink';
import { type CardFound, findCard } from './findCard.ts';
import { readyOpenCv } from './openCv.ts';
import { readGrey } from './readGrey.ts';

/** Looks for the scale card off the page's own thread. With it comes the vision library, so it is started only when first asked. */
export type VisionWorker = {
  /** The picture's file is read here, so that the page never holds its pixels. */
  findCard(picture: Blob, onProgress: (share: number) => void): Promise<CardFound>;
};

const ready = readyOpenCv(library);

expose({
  async findCard(picture, onProgress) {
    const { cv } = await ready;
    onProgress(0.1);
    const grey = await readGrey(picture);
    onProgress(0.3);
    return findCard(cv, grey, (share) => onProgress(0.3 + 0.7 * share));
  },
} satisfies VisionWorker);

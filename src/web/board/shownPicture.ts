import type { OpenPicture } from '../picture/openPicture.ts';

/** What of a picture is needed to look at it: its size, a view of it at once, and parts of it nearer. */
export type ShownPicture = Pick<OpenPicture, 'widthPx' | 'heightPx' | 'view' | 'detail'>;

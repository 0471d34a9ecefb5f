import type { Photo } from '../../../piece/photo.ts';

/** What is known of a photo from its bytes. */
export type PhotoFacts = Pick<
  Photo,
  'sha256' | 'mediaType' | 'bytes' | 'widthPx' | 'heightPx' | 'takenAt' | 'camera'
>;

/** Where a photo belongs: a part, and a finding or an observation on it. */
export type Belongs = {
  part?: string | undefined;
  finding?: string | undefined;
  observation?: string | undefined;
};

/** A photo whose bytes are on this device. */
export type HeldPhoto = {
  sha256: string;
  name: string;
  /** The piece it was taken for, and where it belongs in it. */
  piece: string;
  belongs: Belongs;
  /** As the browser names the kind of file. */
  type: string;
  bytes: number;
  /** When it was kept here, in milliseconds: for the order only. */
  atMs: number;
  /** What this device could tell of the picture; missing where this browser can't open its kind. */
  facts?: PhotoFacts;
  /** Whether the piece has it, be the act handed in or not. */
  entered: boolean;
  stands: 'waits' | 'handed' | 'refused';
  /** Why the record did not take it. */
  words: string;
};

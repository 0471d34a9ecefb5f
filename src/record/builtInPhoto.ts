import type { MediaType } from '../photo/file/sniffMediaType.ts';

/** A photo that comes with the program, by its hash. */
export type BuiltInPhoto = { path: string; mediaType: MediaType };

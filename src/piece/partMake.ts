import { z } from 'zod';

/** How a part can be made, as far as signs hang on it: each is so of a part, or is not, or was not said. */
export const partMake = z.enum(['turned', 'carved', 'veneered', 'tacked', 'dovetailed', 'nailed']);
export type PartMake = z.infer<typeof partMake>;

import type { Check } from './check.ts';
import { shape } from './shape.ts';

/** Every rule of the knowledge files, in the order they are run. */
export const checks: readonly Check[] = [shape];

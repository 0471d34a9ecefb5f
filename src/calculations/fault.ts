/** What is wrong with an input, as data: where, what, and the mend. */
export type Fault = { code: string; path: string; message: string };

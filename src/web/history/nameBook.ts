/** How ids of parts, signs and measures are written out. */
export type NameBook = {
  sign: (id: string) => string;
  part: (id: string) => string;
  measure: (id: string) => string;
  photo: (id: string) => string;
};

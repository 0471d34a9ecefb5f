/** One way into the house: how it is spoken to, and under which names. */
export type Door = {
  scheme: 'http' | 'https';
  /** Whether a name in Host, without its port, is one of this door's own. */
  isOwnName: (name: string) => boolean;
  /** What to do instead, where it is not. */
  instead: string;
};

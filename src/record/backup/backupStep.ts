/** Where the work says how far it is. */
export type OnStep = (step: { step: string; done: number; total: number }) => void;

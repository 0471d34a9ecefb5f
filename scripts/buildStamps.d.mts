/** One hash over the names and bytes of all files under the given files and folders of a root; tests are left out. */
export function inputsHash(root: string, places: readonly string[]): Promise<string>;
/** What each part of dist/ was last made from, by the id of the part; empty where nothing was made. */
export function readStamps(dist: string): Promise<Record<string, string>>;

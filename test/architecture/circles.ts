import { posix } from 'node:path';
import { isForTests } from '../../lint/rooms.ts';
import { readImports } from './readImports.ts';
import type { SourceFile } from './roomFaults.ts';

/**
 * Files that can be reached from themselves along their imports, those of types counted too: each circle by the names of
 * its files.
 *
 * Method: Tarjan (1972), strongly connected components.
 */
export function circlesOfFiles(files: readonly SourceFile[]): string[][] {
  const arrows = new Map(
    files
      .filter(({ path }) => !isForTests(path))
      .map(({ path, text }) => [
        path,
        readImports(text).map(({ from }) => posix.normalize(posix.join(posix.dirname(path), from))),
      ]),
  );
  const [index, low] = [new Map<string, number>(), new Map<string, number>()];
  const open: string[] = [];
  const circles: string[][] = [];
  const visit = (path: string) => {
    index.set(path, index.size);
    low.set(path, index.get(path) as number);
    open.push(path);
    const lower = (to: number) => low.set(path, Math.min(low.get(path) as number, to));
    for (const to of arrows.get(path) ?? []) {
      if (!arrows.has(to)) continue;
      if (!index.has(to)) {
        visit(to);
        lower(low.get(to) as number);
      } else if (open.includes(to)) lower(index.get(to) as number);
    }
    if (low.get(path) !== index.get(path)) return;
    const circle = open.splice(open.indexOf(path));
    if (circle.length > 1 || arrows.get(path)?.includes(path)) circles.push(circle.sort());
  };
  for (const path of arrows.keys()) if (!index.has(path)) visit(path);
  return circles;
}

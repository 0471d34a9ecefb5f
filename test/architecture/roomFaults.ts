import { posix } from 'node:path';
import { isForTests, type Room, readers } from '../../lint/rooms.ts';
import { readImports, withoutComments } from './readImports.ts';

export type SourceFile = { path: string; text: string };

/** A breach of the rules of the house: which rule, where, in words. */
export type RoomFault = { rule: string; path: string; line: number; what: string };

/** Everything in src/ that breaks the table of rooms or keeps state in a module. */
export function roomFaults(files: readonly SourceFile[], rooms: Readonly<Record<string, Room>>): RoomFault[] {
  const empty = Object.keys(rooms).filter(
    (room) => !files.some((file) => file.path.startsWith(`src/${room}/`) && !isForTests(file.path)),
  );
  return [
    ...empty.map((room) => ({
      rule: 'room-without-files',
      path: `src/${room}`,
      line: 1,
      what: `The table has the room ${room}, which has no files: a mistyped name would pass in silence.`,
    })),
    ...files.filter((file) => !isForTests(file.path)).flatMap((file) => faultsOfFile(file, rooms)),
  ];
}

function faultsOfFile(file: SourceFile, rooms: Readonly<Record<string, Room>>): RoomFault[] {
  const name = file.path.split('/')[1] ?? '';
  const room = rooms[name];
  const fault = (rule: string, line: number, what: string) => ({ rule, path: file.path, line, what });
  if (room === undefined) return [fault('room-not-in-table', 1, `src/${name} is not in the table of rooms.`)];
  const arrows = readImports(file.text).flatMap(({ from, typesOnly, line }) => {
    if (!from.startsWith('.')) {
      if (room.pure === false || readers.includes(file.path)) return [];
      if (room.pure.packages.includes(from)) return [];
      return [fault('package-in-pure-room', line, `${name} is pure and may not import ${from}.`)];
    }
    const target = posix.normalize(posix.join(posix.dirname(file.path), from));
    if (!/\.(ts|tsx|css|svg|json)(\?\w+)?$/.test(target))
      return [fault('import-without-ending', line, `Write the ending of ${from}: .ts or .tsx.`)];
    if (room.pure !== false && readers.includes(target) && !readers.includes(file.path))
      return [fault('reader-in-pure-room', line, `${from} reads the disk.`)];
    const other = /^src\/([^/]+)\//.exec(target)?.[1];
    if (other === name || (other === undefined && target.startsWith('package.json'))) return [];
    if (other === undefined) return [fault('arrow', line, `${from} lies outside src/.`)];
    if (room.takes.includes(other)) return [];
    if (typesOnly && room.takesTypesOf?.includes(other) === true) return [];
    return [fault('arrow', line, `${name} may not take from ${other}.`)];
  });
  return [...arrows, ...stateFaults(file), ...(room.pure === false ? [] : destructuredMath(file))];
}

/** A `let` or `var` at the outermost level is state that nobody owns. */
function stateFaults(file: SourceFile): RoomFault[] {
  return linesMatching(file, /^(export\s+)?(let|var)\s/).map((line) => ({
    rule: 'state-in-module',
    path: file.path,
    line,
    what: 'A module keeps no state: let someone own it and hand it in.',
  }));
}

/** `const { random } = Math` hides chance from the other nets. */
function destructuredMath(file: SourceFile): RoomFault[] {
  return linesMatching(file, /\}\s*=\s*(Math|Date|globalThis)\b|=\s*(Math|Date)\s*[;,\n]/).map((line) => ({
    rule: 'taken-apart',
    path: file.path,
    line,
    what: 'Write Math.… in full, so that chance and clock can be seen.',
  }));
}

function linesMatching(file: SourceFile, pattern: RegExp): number[] {
  return withoutComments(file.text)
    .split('\n')
    .flatMap((text, index) => (pattern.test(`${text}\n`) ? [index + 1] : []));
}

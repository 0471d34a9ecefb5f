import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import { z } from 'zod';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import { compileKnowledge } from '../knowledge/compileKnowledge.ts';
import type { KnowledgeFault } from '../knowledge/knowledgeFault.ts';
import type { KnowledgeFile } from '../knowledge/readEntries.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { Json } from '../piece/event.ts';

/** What a user may add: signs of their own and shop files of their own. */
export type OwnKind = 'sign' | 'shop';
export type OwnEntry = { [key: string]: Json };

/** One state of all own entries. The newest is what holds; the earlier ones are kept so that a change can be taken back. */
type OwnState = { signs: OwnEntry[]; shops: OwnEntry[] };

/** The user's own signs and shops, kept apart from the program's and joined to them when they are read. */
export type OwnKnowledge = {
  /** The house's knowledge with the user's own entries in it. */
  knowledge(): Knowledge;
  /** `fault` says in words why the file of own entries can't be read; nothing is changed until it is mended. */
  list(): OwnState & { canUndo: boolean; fault?: string };
  /** Adds an entry, or puts it in the place of the one of its id. Refused, with every fault in words, where it does not hold. */
  put(kind: OwnKind, entry: OwnEntry): Outcome<Knowledge>;
  remove(kind: OwnKind, id: string): Outcome<Knowledge>;
  /** Takes the last change back. */
  undo(): Outcome<Knowledge>;
};

/**
 * Opens the own entries of a data folder: YAML files in the shape of the program's, which can be read and edited by hand.
 *
 * @param folder  where they are kept; made when something is first added
 * @param house   the program's own knowledge, compiled, and the files it was compiled from
 * @param onChange  told the joined knowledge whenever it is another
 */
export function openOwnKnowledge(
  folder: string,
  house: { knowledge: Knowledge; files: () => readonly KnowledgeFile[] },
  onChange: (knowledge: Knowledge) => void,
): OwnKnowledge {
  const stateFile = join(folder, 'own.yaml');
  const earlierFile = join(folder, 'earlier.jsonl');
  const earlier = (): string[] =>
    existsSync(earlierFile) ? readFileSync(earlierFile, 'utf8').split('\n').filter(Boolean) : [];
  const compiled = (state: OwnState) =>
    state.signs.length + state.shops.length === 0
      ? { knowledge: house.knowledge, faults: [] }
      : compileKnowledge([...house.files(), ...filesOf(state)]);
  // Own entries that no longer hold (the program's knowledge moved on) are left out of the tables, never of the file.
  const { state, fault } = readState(stateFile);
  const now = { state, knowledge: compiled(state).knowledge };
  if (now.knowledge === undefined) throw new RangeError('The program’s own knowledge files cannot be read.');
  const holding = { ...now, knowledge: now.knowledge };
  onChange(holding.knowledge);

  const write = (file: string, text: string) => {
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${file}.new`, text, { flush: true });
    renameSync(`${file}.new`, file);
  };
  const become = (state: OwnState, past: readonly string[]): Outcome<Knowledge> => {
    if (fault !== undefined) return refuse('own.file-has-a-slip', fault);
    const { knowledge, faults } = compiled(state);
    const wrong = faults.filter((fault) => isOwn(fault));
    if (knowledge === undefined || wrong.length > 0) {
      return { ok: false, faults: wrong.map(inWords) };
    }
    write(earlierFile, past.map((line) => `${line}\n`).join(''));
    write(stateFile, stringify(state));
    holding.state = state;
    holding.knowledge = knowledge;
    onChange(knowledge);
    return done(knowledge);
  };
  const change = (kind: OwnKind, entries: OwnEntry[]) =>
    become({ ...holding.state, [`${kind}s`]: entries }, [...earlier(), JSON.stringify(holding.state)]);

  return {
    knowledge: () => holding.knowledge,
    list: () => ({
      ...holding.state,
      canUndo: fault === undefined && earlier().length > 0,
      ...(fault === undefined ? {} : { fault }),
    }),
    put: (kind, entry) => {
      const there = kind === 'sign' ? holding.knowledge.signs : holding.knowledge.shops;
      const taken = there[String(entry.id)];
      if (taken !== undefined && taken.mine !== true)
        return refuse('own.id-taken', `“${String(entry.id)}” is the program’s own: choose another id.`, 'id');
      const others = holding.state[`${kind}s`].filter((one) => one.id !== entry.id);
      const id = (one: OwnEntry) => String(one.id);
      return change(
        kind,
        [...others, entry].sort((a, b) => (id(a) < id(b) ? -1 : 1)),
      );
    },
    remove: (kind, id) => {
      const left = holding.state[`${kind}s`].filter((one) => one.id !== id);
      if (left.length === holding.state[`${kind}s`].length)
        return refuse('own.no-such-entry', 'There is no such entry of your own.');
      return change(kind, left);
    },
    undo: () => {
      const past = earlier();
      const last = past.pop();
      if (last === undefined) return refuse('own.nothing-to-undo', 'There is nothing to take back.');
      return become(JSON.parse(last) as OwnState, past);
    },
  };
}

/** The entries as they are kept; where a hand that edited them slipped, none, and the slip in words. */
function readState(file: string): { state: OwnState; fault?: string } {
  const none: OwnState = { signs: [], shops: [] };
  if (!existsSync(file)) return { state: none };
  const slip = (what: string) => ({
    state: none,
    fault: `Your own signs and shops can’t be read: ${what}. The program goes on without them, and the file ${file} is as it was: mend it, or put an earlier one back, and start again.`,
  });
  try {
    const found: unknown = parse(readFileSync(file, 'utf8'));
    const entries = z.strictObject({ signs: ownEntries, shops: ownEntries }).safeParse(found);
    if (entries.success) return { state: entries.data as OwnState };
    const [issue] = entries.error.issues;
    return slip(`${issue?.path.join('.') || 'the whole'} is not a list of entries with an id each`);
  } catch (error) {
    return slip(
      String((error as Error).message)
        .split('\n')[0]
        ?.replace(/[.:]$/, '') ?? 'it is damaged',
    );
  }
}

const ownEntries = z.array(z.looseObject({ id: z.string() })).default([]);

function filesOf({ signs, shops }: OwnState): KnowledgeFile[] {
  return [
    ...(signs.length === 0
      ? []
      : [
          {
            path: 'signs/mine-own-signs.yaml',
            text: stringify({ family: 'own-signs', name: 'Signs of your own', signs }),
            mine: true,
          },
        ]),
    ...shops.map((shop) => ({
      path: `shops/mine-${String(shop.id).replaceAll(/[^a-z0-9-]/g, '')}.yaml`,
      text: stringify(shop),
      mine: true,
    })),
  ];
}

function isOwn(fault: KnowledgeFault): boolean {
  return /(^|\/)mine-/.test(fault.file);
}

/** The path is that of the field within the entry, parted by strokes, so that a screen can say it there. */
function inWords({ path, what, mend, example }: KnowledgeFault) {
  return {
    code: 'own.does-not-hold',
    path: (path ?? []).map(String).join('/'),
    message: `${what} ${mend}${example === undefined || example === '' ? '' : ` A right one: ${example}`}`,
  };
}

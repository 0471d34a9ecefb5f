import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { finding, opening } from '../../test/kits/drafts.ts';
import { calculations } from '../calculations/registry.ts';
import { openSqlite } from '../record/sqlite/openSqlite.ts';
import { sqliteLog } from '../record/sqliteLog.ts';
import { createStore } from '../record/store.ts';

// The program as a person starts it: a process of its own.

const program = fileURLToPath(new URL('../../bin/underside.mjs', import.meta.url));
const many = fileURLToPath(new URL('../../test/kits/manyCommands.mjs', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'underside-cli-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Ended = { code: number; out: string; err: string };

/** Lines of the builder are left out: they only say what was out of date. */
function run(args: readonly string[], input = ''): Promise<Ended> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [program, ...args],
      { cwd: folder, maxBuffer: 1e8 },
      (error, out, err) => {
        const said = err.split('\n').filter((line) => !/^(Making the|Waiting for|\s+\()/.test(line));
        resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err: said.join('\n') });
      },
    );
    child.stdin?.end(input);
  });
}

/** The same program as built, for many commands one after another in one process. */
async function runMany(commands: readonly { args: string[]; input: string }[]): Promise<Ended[]> {
  const { stdout } = await new Promise<{ stdout: string }>((resolve, reject) => {
    const child = execFile(
      process.execPath,
      [many],
      { cwd: folder, maxBuffer: 1e8 },
      (error, stdout, stderr) => (error ? reject(new Error(stderr)) : resolve({ stdout })),
    );
    child.stdin?.end(JSON.stringify(commands));
  });
  return JSON.parse(stdout) as Ended[];
}

const asking = {
  variables: [{ id: 'rain', states: ['yes', 'no'] }],
  tables: [{ variable: 'rain', rows: [[0.25, 0.75]] }],
};

describe('npx underside', { timeout: 60_000 }, () => {
  test('help says what there is; nothing said is help', async () => {
    const help = await run(['help']);
    expect(help).toMatchObject({ code: 0, err: '' });
    expect(help.out).toContain('npx underside calc ID FILE');
    expect(await run([])).toEqual(help);
  });

  test('calc lists every calculation with its question', async () => {
    const { code, out } = await run(['calc']);
    expect(code).toBe(0);
    expect(
      out
        .trim()
        .split('\n')
        .map((line) => line.split(/ {2,}/)),
    ).toEqual(calculations.map(({ id, answers }) => [id, answers]));
  });

  test('calc ID FILE reads a file and prints JSON', async () => {
    const file = join(folder, 'rain.json');
    writeFileSync(file, `\uFEFF${JSON.stringify(asking)}`);
    const { code, out, err } = await run(['calc', 'inference.posterior', file]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toEqual({
      posteriors: { rain: { yes: 0.25, no: 0.75 } },
      logEvidence: expect.closeTo(0, 12),
    });
  });

  test('the example of every calculation runs through standard input', async () => {
    const ids = calculations.map((each) => each.id);
    const examples = await runMany(ids.map((id) => ({ args: ['calc', id, '--example'], input: '' })));
    const answers = await runMany(
      examples.map(({ out }, at) => ({ args: ['calc', ids[at] ?? '', '-'], input: out })),
    );
    expect(ids.length).toBeGreaterThan(20);
    for (const [at, id] of ids.entries()) {
      expect(JSON.parse(examples[at]?.out ?? ''), id).toEqual(calculations[at]?.example);
      const { code, out, err } = answers[at] as Ended;
      expect({ code, err }, id).toEqual({ code: 0, err: '' });
      expect(JSON.parse(out), id).toBeDefined();
    }
  });

  test('the example of evidence.weigh runs, with the knowledge', async () => {
    const example = await run(['calc', 'evidence.weigh', '--example']);
    const answer = await run(['calc', 'evidence.weigh', '-'], example.out);
    expect({ code: answer.code, err: answer.err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(answer.out).readings).toHaveLength(7);
  });

  test('a reader that closes early is no fault', async () => {
    // More than a pipe holds, so that the rest of the answer meets a closed one.
    const states = Array.from({ length: 20_000 }, (_, index) => `s${index}`);
    const many = {
      variables: [{ id: 'a', states }],
      tables: [{ variable: 'a', rows: [states.map(() => 1 / 20_000)] }],
    };
    const file = join(folder, 'many.json');
    writeFileSync(file, JSON.stringify(many));
    const line = `"${process.execPath}" "${program}" calc inference.posterior "${file}" | head -1`;
    const said = await new Promise<string>((resolve) => {
      execFile('sh', ['-c', line], (_, out, err) =>
        resolve(out + err.replace(/^(Making the|Waiting for|\s+\().*\n/gm, '')),
      );
    });
    expect(said).toBe('{\n');
  });

  test('--schema prints the schemas of input and output', async () => {
    const { code, out } = await run(['calc', 'inference.information', '--schema']);
    expect(code).toBe(0);
    const schemas = JSON.parse(out);
    expect(schemas.input.required).toEqual(['variables', 'tables', 'target', 'candidates']);
    expect(schemas.output.type).toBe('array');
  });
});

describe('npx underside verify', { timeout: 60_000 }, () => {
  test('ends with 0 for a record that holds, with 1 for one that was changed behind its back', async () => {
    const log = sqliteLog(join(folder, 'record.db'));
    createStore(log).append([opening('one'), finding('one', 'a', 'splat')]);
    log.close();
    const sound = await run(['verify', '--data', folder]);
    expect(sound).toMatchObject({ code: 0, err: '' });
    expect(sound.out).toMatch(
      /^The record is as it was written: 2 acts on 1 piece, 0 photos\.\n {2}Record [0-9a-f-]{36}\n {2}Head after 2 acts: [0-9a-f ]{64,}\n {2}.+: 2 acts, last hash [0-9a-f]{64}\n$/,
    );

    const database = openSqlite(join(folder, 'record.db'));
    database.exec(
      'DROP TRIGGER events_stay; UPDATE events SET body = replace(body, \'"present"\', \'"absent"\') WHERE position = 2;',
    );
    database.close();
    const changed = await run(['verify', '--data', folder]);
    expect(changed).toMatchObject({ code: 1, err: '' });
    expect(changed.out).toContain('The record does not hold');
    expect(changed.out).toContain('its hash differs');
  });
});

describe('what can’t be done is one sentence for each fault on standard error, and 2', {
  timeout: 60_000,
}, () => {
  const wrong = {
    variables: [{ id: 'rain', states: ['yes', 'no'] }],
    tables: [{ variable: 'rain', rows: [[0.2, 0.9]] }],
  };
  const impossible = { ...asking, tables: [{ variable: 'rain', rows: [[0, 1]] }], evidence: { rain: 'yes' } };

  const cases: [string, string[], string, RegExp][] = [
    ['an unknown command', ['dance'], '', /^There is no command “dance”.*\.\n$/],
    [
      'an unknown calculation',
      ['calc', 'wood.dance', '-'],
      '{}',
      /^There is no calculation “wood.dance”.*\.\n$/,
    ],
    ['no file', ['calc', 'inference.posterior'], '', /^Write the file to read.*\.\n$/],
    [
      'a missing file',
      ['calc', 'inference.posterior', 'nowhere.json'],
      '',
      /^nowhere.json can’t be read: there is no such file\.\n$/,
    ],
    ['two files', ['calc', 'inference.posterior', 'a', 'b'], '', /^One file at a time.*\.\n$/],
    ['an unknown option', ['calc', 'inference.posterior', '--dance'], '', /^There is no --dance here.*\.\n$/],
    ['no JSON', ['calc', 'inference.posterior', '-'], '{oops', /^standard input is not JSON: .*\.\n$/],
    ['nothing at all', ['calc', 'inference.posterior', '-'], '', /^standard input is not JSON: .*\.\n$/],
    [
      'fields missing',
      ['calc', 'inference.posterior', '-'],
      '{"a":1}',
      /^variables: This .*\.\ntables: This .*\.\na: There is no field .*\.\n$/,
    ],
    [
      'a row that does not sum to 1',
      ['calc', 'inference.posterior', '-'],
      JSON.stringify(wrong),
      /^tables\[0\]\.rows\[0\]: A row .*\.\n$/,
    ],
    [
      'evidence that can’t be',
      ['calc', 'inference.posterior', '-'],
      JSON.stringify(impossible),
      /^evidence: What is given of “rain” can’t be true.*\.\n$/,
    ],
    ['verify of nothing', ['verify', '--data', join(folder, 'none')], '', /^There is no record in .*\.\n$/],
    ['verify with words', ['verify', 'please'], '', /^There is no file please.*\.\n$/],
  ];

  test('whatever it is', async () => {
    const ended = await runMany(cases.map(([, args, input]) => ({ args, input })));
    for (const [at, [what, , , sentence]] of cases.entries())
      expect(ended[at], what).toEqual({ code: 2, out: '', err: expect.stringMatching(sentence) });
  });

  test.each(cases.filter(([what]) => ['an unknown command', 'no JSON', 'fields missing'].includes(what)))(
    '%s, in a process of its own',
    async (_, args, input, sentence) => {
      expect(await run(args, input)).toEqual({ code: 2, out: '', err: expect.stringMatching(sentence) });
    },
  );
});

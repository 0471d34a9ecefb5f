import { expect, test } from 'vitest';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { settledIn } from '../../src/learning/learnedKnowledge.ts';
import { axeViolations } from './support/axeViolations.ts';
import { pieceOf } from './support/pieceOf.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

/** Takes on an invented chair that lacks pegs, and settles it where a verdict is given. */
async function chair(id: string, settled?: object): Promise<void> {
  const findings = {
    'joint-pegged@side-rail-left': {
      id: 'joint-pegged@side-rail-left',
      sign: 'joint-pegged',
      part: 'side-rail-left',
      state: 'absent',
    },
  };
  const to = { id, title: `Invented ${id}`, form: 'side-chair', findings, ...(settled && { settled }) };
  const act = {
    id: crypto.randomUUID(),
    piece: id,
    kind: 'piece-opened',
    changes: [{ path: [], to }],
    device: 'test',
    at: '2026-03-01T10:00:00.000+00:00',
  };
  const answer = await fetch(`${program.server.address}api/pieces/${id}/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-underside': '1' },
    body: JSON.stringify({ events: [act] }),
  });
  expect(answer.status).toBeLessThan(300);
}

test('a case is settled on its page; with nine others, and reckoned, what it taught is weighed with once switched on', async () => {
  const { address } = program.server;
  const verdict = { by: 'document', making: 'of-the-period', on: '2026-02-01' };
  for (let each = 0; each < 9; each += 1) await chair(`chair-${each}`, verdict);
  await chair('chair-last');
  const page = await program.browser.newPage();
  await page.goto(`${address}piece/chair-last/engagement`);
  await page.getByRole('radio', { name: 'A document of the time' }).click();
  // By key, which does not hang on where things stand: the page grows while what was settled opens.
  await page
    .getByRole('group', { name: 'What it turned out to be' })
    .getByLabel('Of the period')
    .press('Space');
  const last = await pieceOf(program.server, 'chair-last', ({ settled }) => settled?.making !== undefined);
  expect(last.settled).toMatchObject({ by: 'document', making: 'of-the-period', rests: [] });

  await page.goto(`${address}reference/own`);
  const use = page.getByRole('checkbox', { name: 'Weigh with the figures learned' });
  expect(await use.isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Reckon the settled cases' }).click();
  await page.getByText('Over 10 cases learned figures predicted better').waitFor({ timeout: 60_000 });
  expect(await page.locator('.settled-scores tbody tr').count()).toBe(11);
  await use.click();
  await page.getByText('In use: every weighing now says so').waitFor();
  expect(await axeViolations(page)).toEqual([]);
  const knowledge = (await (await fetch(`${address}knowledge.json`)).json()) as Knowledge;
  expect(settledIn(knowledge.version)).toBe(10);

  await page.goto(`${address}piece/chair-last/readings`);
  await page.getByText('moved by 10 settled cases of the examiner’s own').waitFor({ timeout: 60_000 });

  await page.goto(`${address}reference/own`);
  await page.getByRole('button', { name: 'Leave out: Invented chair-4' }).click();
  await page.getByText('Switched on, but not in use').waitFor();
  await page.close();
}, 240_000);

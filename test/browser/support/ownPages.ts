import type { Page } from 'playwright-core';

/** The pages that belong to no room of another test: each with a name for the messages. */
export function ownPages(pieceId: string): Record<string, string> {
  return {
    pieces: '',
    'new piece': 'new',
    engagement: `piece/${pieceId}/engagement`,
    condition: `piece/${pieceId}/condition`,
    opinion: `piece/${pieceId}/opinion`,
    'the sheet before signing': `piece/${pieceId}/sign`,
    'a comparison': `piece/${pieceId}/comparison`,
    history: `piece/${pieceId}/history`,
    'measuring in a photo': `piece/${pieceId}/bench#photo-measure`,
    'tool marks, of an example': 'piece/example-side-chair/bench#toolmarks',
    'an example, read-only': 'piece/example-armchair/engagement',
    'opinion of an example': 'piece/example-armchair/opinion',
    reference: 'reference',
    'a sign with its drawing': 'reference?sign=nail-cut',
    'signs narrowed': 'reference?shelf=signs&of=side-chair&on=front-rail',
    forms: 'reference?shelf=forms',
    'a form': 'reference?form=chest-of-drawers',
    'a wood': 'reference?wood=cherry-black',
    'own additions': 'reference/own',
    'the sheet for a sign': 'reference/own?kind=sign',
    'the sheet for a shop': 'reference/own?kind=shop',
    'an alteration': 'reference?alteration=arms-added',
    shops: 'reference?shelf=shops',
    sources: 'reference?shelf=sources',
    settings: 'settings',
    devices: 'devices',
    'an address that leads nowhere': 'nowhere',
    'a piece that is not there': 'piece/none/history',
  };
}

/** Takes a new piece on by its own page; answers its id. */
export async function takeOnPiece(page: Page, address: string, title: string): Promise<string> {
  await page.goto(`${address}new`);
  await page.getByRole('radio', { name: /^Side chair/ }).check();
  await page.getByLabel('Name of the piece').fill(title);
  await page.getByLabel('Said to be of').fill('1760–1790');
  await page.getByRole('button', { name: 'Open the piece' }).click();
  await page.waitForURL(/\/engagement$/);
  const id = /piece\/([^/]+)/.exec(page.url())?.[1];
  if (id === undefined) throw new Error(`no piece in ${page.url()}`);
  await allKept(page);
  return id;
}

/** Waits until the page says that the record has everything. */
export async function allKept(page: Page): Promise<void> {
  await page.getByText('Saved', { exact: true }).waitFor();
}

import { CannotOpen } from '../../src/record/fault.ts';
import { openDataFolder } from '../../src/record/openDataFolder.ts';
import { openPhotos, photoLimits } from '../../src/record/photos.ts';
import { createStore } from '../../src/record/store.ts';
import { finding, step } from './drafts.ts';
import { testApp } from './testApp.ts';

/**
 * Opens a data folder as the program does and asks it for all that a screen shows, then enters something.
 *
 * @param shas  photos to ask for
 * @returns the sentence that says why it was not opened, if so; and whatever was not told to a person in a sentence
 */
export async function lookOverHttp(
  dir: string,
  shas: readonly string[],
): Promise<{ refusal: string | undefined; complaints: string[] }> {
  let opened: ReturnType<typeof openDataFolder>;
  try {
    opened = openDataFolder(dir);
  } catch (error) {
    if (!(error instanceof CannotOpen)) return { refusal: undefined, complaints: [`opening: ${error}`] };
    return { refusal: error.message, complaints: isSentence(error.message) ? [] : [error.message] };
  }
  const complaints: string[] = [];
  try {
    const photos = await openPhotos(dir, { ...photoLimits, heicWorker: new URL('file:///none') });
    const app = await testApp({ parts: { store: createStore(opened.log), photos, dataDir: dir } });
    const hear = async (what: string, asked: Promise<Response>) => {
      const answer = await asked;
      const said = answer.status < 400 ? '' : await answer.text();
      if (answer.status >= 400 && !isPlain(said)) complaints.push(`${what}: ${answer.status} ${said}`);
    };
    const pages = ['record', 'pieces', 'pieces/one', 'pieces/one/history', 'pieces/one/history?most=3'];
    for (const page of [...pages, ...shas.map((sha) => `photos/${sha}/original`)])
      await hear(page, app.get(`/api/${page}`));
    await hear('entering', app.post('/api/pieces/one/events', { events: [finding('one', 'new', 'seat')] }));
    await hear('undoing', app.post('/api/pieces/one/undo', step()));
    complaints.push(...app.faults.map((error) => `on the terminal: ${(error as Error).stack}`));
  } catch (error) {
    complaints.push(`thrown: ${(error as Error).stack}`);
  } finally {
    opened.log.close();
    opened.lock.release();
  }
  return { refusal: undefined, complaints };
}

/** Faults, each in a sentence of its own, and none that only says that something went wrong. */
function isPlain(said: string): boolean {
  try {
    const { faults } = JSON.parse(said) as { faults: { code: string; message: string }[] };
    return (
      faults.length > 0 && faults.every(({ code, message }) => code !== 'server.fault' && isSentence(message))
    );
  } catch {
    return false;
  }
}

/** Words that begin and end as a sentence does, without a place in the program. */
function isSentence(words: string): boolean {
  return /[.]$/.test(words.trim()) && !/\bat .*:\d+:\d+|\.[mc]?[jt]s:\d+/.test(words);
}

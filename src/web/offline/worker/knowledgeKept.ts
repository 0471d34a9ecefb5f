const address = '/knowledge.json';
const kept = (build: string) => `underside-knowledge-${build}`;

/** How long the server is waited for where the device has the knowledge already: a network may be there and carry nothing. */
const patienceMs = 1500;

/**
 * The knowledge: the server's where it answers soon and is of this build, else what the device has of this build. The
 * screens of one build never read the knowledge of another.
 *
 * @param ask  the question to the server
 */
export async function answerKnowledge(ask: () => Promise<Response>, build: string): Promise<Response> {
  const cache = await caches.open(kept(build));
  const held = await cache.match(address);
  const fresh = ask().then(async (answer) => {
    if (isOf(build, answer)) await cache.put(address, answer.clone());
    return answer;
  });
  if (held === undefined) return fresh;
  const inTime = fresh.then((answer) => (isOf(build, answer) ? answer : held)).catch(() => held);
  return Promise.race([inTime, new Promise<Response>((give) => setTimeout(give, patienceMs, held))]);
}

/** Lays the knowledge of a build on the device; an earlier state of it is taken anew. */
export async function layInKnowledge(build: string): Promise<void> {
  const answer = await fetch(address);
  if (!isOf(build, answer)) throw new Error('The server has the knowledge of another build.');
  const cache = await caches.open(kept(build));
  await cache.put(address, answer);
}

/** Lets go of the knowledge of builds that no page can still be open on. */
export async function letGoOfOlderKnowledge(build: string): Promise<void> {
  const older = (await caches.keys()).filter((name) => name.startsWith(kept('')) && name !== kept(build));
  await Promise.all(older.slice(0, -1).map((name) => caches.delete(name)));
}

function isOf(build: string, answer: Response): boolean {
  return answer.ok && answer.headers.get('x-underside-build') === build;
}

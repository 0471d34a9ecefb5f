import { Hono } from 'hono';
import { answerWithPolicy, onlyOurPages } from '../guard.ts';
import type { Authority } from './authority.ts';
import { trustCss } from './trustCss.ts';
import { trustPicture } from './trustPicture.ts';
import { type TrustWay, trustWays } from './trustSteps.ts';

/** The name under which the certificate is saved. */
const fileName = 'underside-authority.crt';

/**
 * The one page that is served over plain http: how a device comes to trust this computer, and the certificate it is to trust. Nothing else is
 * answered there, and nothing is taken in.
 *
 * @param addresses  where Underside is opened once it is trusted
 */
export function trustPage(authority: Authority, addresses: () => readonly string[]): Hono {
  const app = new Hono();
  app.use(answerWithPolicy);
  app.use(async (context, next) => {
    await next();
    context.header('cache-control', 'no-store');
  });
  const names = () => addresses().map((address) => new URL(address).hostname);
  app.use(
    onlyOurPages({
      scheme: 'http',
      isOwnName: (name) => names().includes(name),
      instead: 'open it as the Devices page of the office computer says.',
    }),
  );
  app.get('/', (context) => context.html(pageOf(authority, addresses())));
  app.get('/trust.css', (context) =>
    context.body(trustCss, 200, { 'content-type': 'text/css; charset=utf-8' }),
  );
  app.get(`/${fileName}`, (context) =>
    certificateFile(authority, (bytes, headers) => context.body(bytes, 200, headers)),
  );
  app.all('*', (context) => context.text('There is nothing at this address.', 404));
  return app;
}

/** The authority's certificate as a file to save. */
export function certificateFile(
  { der }: Authority,
  answer: (bytes: Uint8Array<ArrayBuffer>, headers: Record<string, string>) => Response,
): Response {
  return answer(new Uint8Array(der), {
    'content-type': 'application/x-x509-ca-cert',
    'content-disposition': `attachment; filename="${fileName}"`,
    'cache-control': 'no-store',
  });
}

function pageOf({ fingerprint, ends }: Authority, addresses: readonly string[]): string {
  const links = addresses.map((address) => `<li><a href="${address}">${address}</a></li>`).join('');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Trust the office computer · Underside</title>
<link rel="stylesheet" href="/trust.css">
</head>
<body>
<main>
<p class="house">Underside</p>
<h1>Let this device trust the office computer</h1>
<p>Done once for each tablet or phone. Then Underside opens on it without a warning, works in a house without a signal, and nobody on the
network can read along.</p>
<h2>1. Compare</h2>
<p>On the office computer, the page <strong>Devices</strong> shows these same pairs. If one differs, stop: somebody else may have answered you.</p>
<p class="pairs">${fingerprint
    .match(/.{1,24}/g)
    ?.map((line) => `<span>${line.trim()}</span>`)
    .join(' ')}</p>
<h2>2. Fetch and trust</h2>
<p><a class="button" href="/${fileName}" download>Fetch the certificate</a></p>
<p class="soft">The names of menus are written from memory and differ between versions: where one isn’t there, search the settings of the device for
“certificate”. What this certificate vouches for is limited to local networks; it is good until ${ends.toISOString().slice(0, 10)}.</p>
<nav aria-label="Kinds of device">${trustWays.map(({ id, device }) => `<a href="#${id}">${device}</a>`).join(' ')}</nav>
${trustWays.map(wayOf).join('\n')}
<h2>3. Open Underside</h2>
<p>If the page opens without a warning, it worked. Then pair the device with the code on the office computer’s page Devices.</p>
<ul>${links}</ul>
</main>
</body>
</html>`;
}

function wayOf({ id, device, steps, undo }: TrustWay): string {
  const items = steps
    .map(({ words, picture }) => `<li>${trustPicture(picture)}<p>${words}</p></li>`)
    .join('');
  return `<section id="${id}" aria-labelledby="${id}-name"><h3 id="${id}-name">${device}</h3><ol>${items}</ol><p class="soft">To undo it later: ${undo}</p></section>`;
}

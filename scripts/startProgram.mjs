/** What `npm start` does once Node is known to be new enough. Plain Node until the packages are there. */
import { isIP } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from './build.mjs';
import { installPackages, whyInstall } from './installPackages.mjs';
import { openInBrowser } from './openInBrowser.mjs';
import { userDataFolder } from './userDataFolder.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

const help = `npm start -- [--data DIR] [--port NUMBER] [--read-only] [--network] [--no-open]
  --data DIR      keep the record in this folder instead of the usual one
  --port NUMBER   answer on this port instead of 4717 (0 lets the system choose)
  --read-only     look at the record only: nothing can be entered, and nothing in its folder is changed
                  (by itself where the folder can't be written, or another Underside has it open)
  --network       let paired tablets and phones in from the local network, over https, once a passphrase was chosen on the
                  page Devices; without it Underside answers on this computer only, until that page opens it
  --network-address ADDRESS
                  the same, at this one of the computer's addresses only
  --no-open       do not open the browser`;

/** Starts the program; says in one plain sentence what stands in the way, and then exits with 1. */
export async function startProgram(args) {
  const chosen = readOptions(args);
  if (typeof chosen === 'string') return stop(chosen);
  if (chosen.help) return console.log(help);

  const why = whyInstall(root, { withTools: false });
  if (why !== undefined) {
    console.log(why);
    const fault = await installPackages(root, { withTools: false });
    if (fault !== undefined) return stop(fault);
  }
  const { faults } = await build(console.log);
  if (faults.length > 0) return stop(faults.join('\n'));

  const { startServer } = await import(pathToFileURL(join(root, 'dist', 'server.js')).href);
  const { data: dataDir, port, readOnly, network, networkAddress } = chosen;
  const started = await startServer({
    dataDir,
    port,
    readOnly,
    network,
    networkAddress,
    distDir: join(root, 'dist'),
  });
  if (!started.ok) return stop(started.message);
  const begin = new URL(started.firstPage, started.address).href;
  console.log(`Underside is open at ${started.address}`);
  if (started.firstPage !== '/') console.log(`A worked example to begin with: ${begin}`);
  if (started.readOnly === undefined) console.log(`The record is kept in ${dataDir}. Close with Ctrl+C.`);
  else
    console.log(
      `The record in ${dataDir} is open read-only. ${started.readOnly.words} ${started.readOnly.instead} Close with Ctrl+C.`,
    );
  sayNetwork(started);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
    process.once(signal, () => started.close().then(() => process.exit(0)));
  if (chosen.open) openInBrowser(begin);
}

/** Whether, and where, anybody can come in from the network: said at every start where it was asked for. */
function sayNetwork({ network, networkFault, address }) {
  if (networkFault !== undefined)
    console.log(
      `The network is shut. ${networkFault} The page for that: ${new URL('devices', address).href}`,
    );
  if (network.isOpen)
    console.log(
      `Open to the local network, to paired devices and by passphrase, at ${network.addresses.join(' ')}\nHow a device comes to trust it: ${network.trustPages[0]}`,
    );
}

function readOptions(args) {
  try {
    const { values } = parseArgs({
      args,
      options: {
        data: { type: 'string' },
        port: { type: 'string', default: '4717' },
        'read-only': { type: 'boolean', default: false },
        network: { type: 'boolean', default: false },
        'network-address': { type: 'string' },
        'no-open': { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    const port = Number(values.port);
    if (!/^\d+$/.test(values.port) || port > 65535)
      return `--port needs a number from 0 to 65535, and got "${values.port}".`;
    if (values.data === '') return '--data needs the name of a folder.';
    const data = values.data ?? userDataFolder(process.platform, process.env);
    const networkAddress = values['network-address'];
    if (networkAddress !== undefined && isIP(networkAddress) === 0)
      return `--network-address needs an address of this computer, as 192.168.1.20, and got "${networkAddress}".`;
    return {
      data,
      port,
      readOnly: values['read-only'],
      network: values.network || networkAddress !== undefined,
      networkAddress,
      open: !values['no-open'],
      help: values.help,
    };
  } catch (error) {
    return `${error.message.split('. ')[0]}.\n${help}`;
  }
}

function stop(sentence) {
  console.error(sentence);
  process.exitCode = 1;
}

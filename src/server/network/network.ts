import { createServer as createPlainServer, type RequestListener, type Server } from 'node:http';
import { createServer } from 'node:https';
import { isIPv6 } from 'node:net';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import type { Access } from '../access/access.ts';
import { type Authority, openAuthority } from './authority.ts';
import { isLocalAddress, ownAddresses, ownLocalName } from './ownAddresses.ts';

/** How the network side stands, for the page of the devices. */
export type NetworkStanding = {
  isOpen: boolean;
  /** Where a device opens Underside, the plainest first. */
  addresses: string[];
  /** Where a device is told, over plain http, how to trust this computer, in the order of the addresses. */
  trustPages: string[];
  fingerprint: string | null;
  /** Why it can't be opened at all, in words. */
  never: string | null;
};

/** What the network side needs. */
export type NetworkParts = {
  dataDir: string;
  access: Access;
  /** Ports of https and of the page on trust; 0 lets the system choose. */
  ports: { https: number; trust: number };
  /** One address to answer at instead of all of this machine's on its local networks. */
  address?: string | undefined;
  /** Why nothing may be opened, as where a record is only looked at. */
  never?: string | undefined;
  /** What answers over https, and the page on trust; `names` are the hosts that are answered to. */
  answer: (names: () => readonly string[]) => RequestListener;
  trust: (authority: Authority, addresses: () => readonly string[]) => RequestListener;
  now?: () => number;
};

/** The network side: shut until somebody at the computer opens it. */
export type Network = {
  standing(): NetworkStanding;
  /** Opens it, where there is a passphrase; opened twice it stays as it is. */
  open(): Promise<Outcome<undefined>>;
  close(): Promise<void>;
  /** What devices are to trust, while it is open. */
  authority(): Authority | undefined;
};

/** Looked at so often whether the certificate is to be renewed. */
const renewEveryMs = 6 * 3_600_000;
const mostConnections = 256;

type Opened = {
  servers: Server[];
  hosts: string[];
  https: number;
  trust: number;
  authority: Authority;
  timer: NodeJS.Timeout;
};

export function openNetwork(parts: NetworkParts): Network {
  const held: { opened?: Opened; opening?: Promise<Outcome<undefined>> } = {};
  const url = (scheme: string, host: string, port: number) =>
    `${scheme}://${isIPv6(host) ? `[${host}]` : host}:${port}/`;
  const open = async (): Promise<Outcome<undefined>> => {
    const asked = hostsToOpen(parts);
    if (!asked.ok) return asked;
    const authority = await openAuthority(parts.dataDir, parts.now);
    const name = ownLocalName();
    const hosts = [...asked.value, ...(name === undefined ? [] : [name])];
    const names = () => hosts.map((host) => (isIPv6(host) ? `[${host}]` : host));
    const identity = await authority.serverFor(hosts);
    const servers: Server[] = [];
    const ports = { ...parts.ports };
    try {
      for (const host of asked.value) {
        const secure = createServer(
          { key: identity.key, cert: identity.certificate, minVersion: 'TLSv1.2' },
          parts.answer(names),
        );
        servers.push(secure);
        ports.https = await listenAt(secure, host, ports.https);
        const plain = createPlainServer(
          parts.trust(authority, () => hosts.map((each) => url('https', each, ports.https))),
        );
        servers.push(plain);
        ports.trust = await listenAt(plain, host, ports.trust);
      }
    } catch (error) {
      await endAll(servers);
      return cannotListen(error as NodeJS.ErrnoException, parts.ports);
    }
    const renew = async () => {
      const next = await authority.serverFor(hosts);
      for (const server of servers)
        if ('setSecureContext' in server)
          (server as ReturnType<typeof createServer>).setSecureContext({
            key: next.key,
            cert: next.certificate,
            minVersion: 'TLSv1.2',
          });
    };
    const timer = setInterval(() => void renew().catch(() => {}), renewEveryMs).unref();
    held.opened = { servers, hosts, ...ports, authority, timer };
    return done(undefined);
  };
  return {
    standing() {
      const { opened } = held;
      const never = hostsToOpen(parts);
      return {
        isOpen: opened !== undefined,
        addresses: opened?.hosts.map((host) => url('https', host, opened.https)) ?? [],
        trustPages: opened?.hosts.map((host) => url('http', host, opened.trust)) ?? [],
        fingerprint: opened?.authority.fingerprint ?? null,
        never:
          never.ok || never.faults[0]?.code === 'access.no-passphrase'
            ? null
            : (never.faults[0]?.message ?? ''),
      };
    },
    authority: () => held.opened?.authority,
    async open() {
      if (held.opened !== undefined) return done(undefined);
      held.opening ??= open().finally(() => {
        delete held.opening;
      });
      return held.opening;
    },
    async close() {
      await held.opening;
      const { opened } = held;
      if (opened === undefined) return;
      delete held.opened;
      clearInterval(opened.timer);
      await endAll(opened.servers);
    },
  };
}

/** The addresses to answer at, or why none. */
function hostsToOpen({ never, access, address }: NetworkParts): Outcome<string[]> {
  if (never !== undefined) return refuse('network.never', never);
  if (address !== undefined && !isLocalAddress(address))
    return refuse(
      'network.not-local',
      `${address} is no address of a local network: Underside is not made to be reached from the internet. Name one that begins with 10., 172.16. to 172.31. or 192.168.`,
    );
  const hosts = address === undefined ? ownAddresses() : [address];
  if (hosts.length === 0)
    return refuse(
      'network.none',
      'This computer is on no local network: connect it to the one the tablet is on, and open this page anew.',
    );
  if (!access.hasPassphrase())
    return refuse(
      'access.no-passphrase',
      'First choose a passphrase: nobody comes in from the network without one.',
    );
  return done(hosts);
}

function listenAt(server: Server, host: string, port: number): Promise<number> {
  server.maxConnections = mostConnections;
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ host, port, ipv6Only: true }, () => {
      server.off('error', reject);
      resolve((server.address() as { port: number }).port);
    });
  });
}

async function endAll(servers: readonly Server[]): Promise<void> {
  await Promise.all(
    servers.map(
      (server) =>
        new Promise<void>((resolve) => {
          server.close(() => resolve());
          server.closeAllConnections();
        }),
    ),
  );
}

function cannotListen(
  { code, message }: NodeJS.ErrnoException,
  ports: NetworkParts['ports'],
): ReturnType<typeof refuse> {
  if (code === 'EADDRINUSE')
    return refuse(
      'network.port-taken',
      `Port ${ports.https} or ${ports.trust} is taken by another program: start Underside with another --port, since the two after it are used for the network.`,
    );
  return refuse('network.cannot-listen', `The network can’t be opened (${message}): nothing was changed.`);
}

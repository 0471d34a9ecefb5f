import { BlockList, isIPv6 } from 'node:net';
import { hostname, type NetworkInterfaceInfo, networkInterfaces } from 'node:os';

/**
 * Address ranges that no computer of the internet is reached at.
 *
 * @source RFC 1918 (10/8, 172.16/12, 192.168/16), RFC 4193 (fc00::/7), RFC 1122 and 4291 (loopback)
 */
export const localRanges: readonly { address: string; bits: number }[] = [
  { address: '10.0.0.0', bits: 8 },
  { address: '172.16.0.0', bits: 12 },
  { address: '192.168.0.0', bits: 16 },
  { address: '127.0.0.0', bits: 8 },
  { address: 'fc00::', bits: 7 },
  { address: '::1', bits: 128 },
];

/** Whether an address can be reached from this machine or its local network only. */
export function isLocalAddress(address: string): boolean {
  const list = new BlockList();
  for (const range of localRanges)
    list.addSubnet(range.address, range.bits, isIPv6(range.address) ? 'ipv6' : 'ipv4');
  return list.check(address, isIPv6(address) ? 'ipv6' : 'ipv4');
}

/**
 * The addresses of this machine on its local networks, those of IPv4 first; none of the internet, and not loopback.
 *
 * @param interfaces  as the operating system tells them
 */
export function ownAddresses(
  interfaces: NodeJS.Dict<NetworkInterfaceInfo[]> = networkInterfaces(),
): string[] {
  const found = Object.values(interfaces).flatMap((each) => each ?? []);
  const local = found.filter(({ internal, address }) => !internal && isLocalAddress(address));
  return local
    .toSorted((one, other) => Number(isIPv6(one.address)) - Number(isIPv6(other.address)))
    .map(({ address }) => address);
}

/** The name of this machine on its local network, as it says it of itself there: `office.local`; undefined where it has none that can be one. */
export function ownLocalName(host: string = hostname()): string | undefined {
  const label = host.toLowerCase().split('.')[0] ?? '';
  return /^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?$/.test(label) ? `${label}.local` : undefined;
}

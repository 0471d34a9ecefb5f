import { getRequestListener } from '@hono/node-server';
import type { Hono } from 'hono';
import type { ReadOnly } from '../../record/readOnly/readOnly.ts';
import { openAccess } from '../access/access.ts';
import { openAccessFile } from '../access/accessFile.ts';
import { homeAccessRoutes } from '../access/homeAccessRoutes.ts';
import { type Network, openNetwork } from '../network/network.ts';
import { trustPage } from '../network/trustPage.ts';
import { homeDoor } from './homeDoor.ts';
import { networkDoor } from './networkDoor.ts';

/** Where the doors are, and whether that of the network may be opened. */
export type DoorOptions = {
  dataDir: string;
  /** Of the door at home; the two after it are those of the network. */
  port: number;
  readOnly: ReadOnly | undefined;
  networkAddress?: string | undefined;
};

/** Both doors of a house: that at home, to be listened to on loopback, and that of the network, which is shut. */
export function openDoors(house: Hono, options: DoorOptions): { home: Hono; network: Network } {
  const { dataDir, port, readOnly, networkAddress } = options;
  const access = openAccess(openAccessFile(dataDir));
  const network = openNetwork({
    dataDir,
    access,
    ports: { https: port === 0 ? 0 : port + 1, trust: port === 0 ? 0 : port + 2 },
    address: networkAddress,
    never:
      readOnly === undefined
        ? undefined
        : 'This record is open read-only: devices are let in where it is worked in.',
    answer: (names) => getRequestListener(networkDoor(house, access, names).fetch),
    trust: (authority, addresses) => getRequestListener(trustPage(authority, addresses).fetch),
  });
  return { home: homeDoor(house, homeAccessRoutes(access, network, readOnly)), network };
}

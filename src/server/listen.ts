import type { Server } from 'node:http';
import { serve } from '@hono/node-server';
import type { Hono } from 'hono';
import { done, type Outcome, refuse } from '../ground/fault.ts';

/** A server that answers, where, and how to end it. */
export type Listening = { address: string; close: () => Promise<void> };

/**
 * Answers on this machine only.
 *
 * @param port  0 lets the system choose
 */
export function listen(app: Hono, port: number): Promise<Outcome<Listening>> {
  return new Promise((resolve) => {
    const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port }, ({ port: taken }) => {
      resolve(done({ address: `http://127.0.0.1:${taken}/`, close: () => endServer(server) }));
    }) as Server;
    server.once('error', (error: NodeJS.ErrnoException) => resolve(portFault(error, port)));
  });
}

function endServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

function portFault(error: NodeJS.ErrnoException, port: number): ReturnType<typeof refuse> {
  if (error.code === 'EADDRINUSE')
    return refuse(
      'server.port-taken',
      `Port ${port} is taken by another program: choose another with --port, or --port 0 for any that is free.`,
    );
  if (error.code === 'EACCES')
    return refuse(
      'server.port-forbidden',
      `Port ${port} may not be used by this user: choose one above 1023 with --port.`,
    );
  return refuse(
    'server.cannot-listen',
    `The server cannot answer on port ${port} (${error.message}): choose another with --port.`,
  );
}

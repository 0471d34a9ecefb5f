import { homedir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { userDataFolder } from './userDataFolder.mjs';

// The places are those of the XDG base directory specification 0.8, Apple's file system guide and Windows' known folders.
it.each([
  ['linux', {}, join(homedir(), '.local', 'share', 'underside')],
  ['linux', { XDG_DATA_HOME: '/data' }, join('/data', 'underside')],
  ['linux', { XDG_DATA_HOME: '' }, join(homedir(), '.local', 'share', 'underside')],
  ['darwin', {}, join(homedir(), 'Library', 'Application Support', 'Underside')],
  [
    'win32',
    { APPDATA: 'C:\\Users\\a\\AppData\\Roaming' },
    join('C:\\Users\\a\\AppData\\Roaming', 'Underside'),
  ],
])('keeps the record of a user on %s with %j in %s', (platform, env, folder) => {
  expect(userDataFolder(platform, env)).toBe(folder);
});

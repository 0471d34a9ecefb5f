import { homedir } from 'node:os';
import { join } from 'node:path';

/** The folder where this system keeps a user's data, and ours within it. */
export function userDataFolder(platform, env) {
  if (platform === 'win32') return join(env.APPDATA ?? join(homedir(), 'AppData', 'Roaming'), 'Underside');
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Underside');
  return join(env.XDG_DATA_HOME ? env.XDG_DATA_HOME : join(homedir(), '.local', 'share'), 'underside');
}

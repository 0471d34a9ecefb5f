import { spawn } from 'node:child_process';

/** Opens an address in the user's browser, where there is a screen to show it on; never fails. */
export function openInBrowser(address) {
  const command = browserCommand(process.platform, process.env);
  if (command === undefined) return;
  try {
    const child = spawn(command[0], [...command.slice(1), address], { stdio: 'ignore', detached: true });
    child.on('error', () => {});
    child.unref();
  } catch {
    // The address is on the terminal already.
  }
}

function browserCommand(platform, env) {
  if (env.CI) return undefined;
  if (platform === 'darwin') return ['open'];
  if (platform === 'win32') return ['cmd', '/c', 'start', ''];
  return env.DISPLAY || env.WAYLAND_DISPLAY ? ['xdg-open'] : undefined;
}

/** Where an answer comes from: the device's screens, its knowledge, its photos, or the server alone. */
export type Route =
  | { from: 'screens'; path: string }
  | { from: 'knowledge' }
  | { from: 'photos'; sha256: string; size: PhotoSize }
  | { from: 'server' };

export type PhotoSize = 'original' | 'view' | 'thumb';

const photo = /^\/api\/photos\/([0-9a-f]{64})\/(original|view|thumb)$/;

/**
 * Which way a question of a page goes.
 *
 * @param asked  method, mode ("navigate" for a page that is opened) and the path of the address
 * @param isScreen  whether a path is a file of the screens
 */
export function routeOf(
  asked: { method: string; mode: string; path: string },
  isScreen: (path: string) => boolean,
): Route {
  const { method, mode, path } = asked;
  if (method !== 'GET') return { from: 'server' };
  if (path === '/knowledge.json') return { from: 'knowledge' };
  const [, sha256, size] = photo.exec(path) ?? [];
  if (sha256 !== undefined) return { from: 'photos', sha256, size: size as PhotoSize };
  if (path.startsWith('/api/')) return { from: 'server' };
  if (isScreen(path)) return { from: 'screens', path };
  // Every address of a page is the one page, which finds its way by itself; a file that is none of ours is the server's.
  const isPage = mode === 'navigate' && !/\.[a-z0-9]+$/i.test(path);
  if (isPage) return { from: 'screens', path: '/index.html' };
  return path.startsWith('/assets/') ? { from: 'screens', path } : { from: 'server' };
}

import react from '@vitejs/plugin-react';
import { defineConfig, type UserConfig } from 'vite';

/**
 * Builds the screens into dist/web. `npx vite` serves them while working, against a server already started on 4717.
 * A build is always the finished one: started from a test, it would otherwise take over that NODE_ENV and come out as
 * the slower one for working on, which runs every effect twice.
 */
export default defineConfig(({ command }) => {
  if (command === 'build') process.env.NODE_ENV = 'production';
  return screens;
});

const screens: UserConfig = {
  root: 'src/web',
  base: '/',
  publicDir: 'public',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 900,
  },
  server: {
    host: '127.0.0.1',
    proxy: Object.fromEntries(
      ['/api', '/knowledge.json'].map((path) => [
        path,
        process.env.UNDERSIDE_SERVER ?? 'http://127.0.0.1:4717',
      ]),
    ),
  },
};

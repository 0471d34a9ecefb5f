import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Builds the screens into dist/web. `npx vite` serves them while working, against a server already started on 4717. */
export default defineConfig({
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
});

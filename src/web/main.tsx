import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { AccessGate } from './access/AccessGate.tsx';
import { KnowledgeProvider } from './knowledge/KnowledgeProvider.tsx';
import { openBrowserKeeper } from './offline/photos/browserKeeper.ts';
import { PhotoKeeperProvider } from './offline/photos/PhotoKeeperProvider.tsx';
import { DeskProvider } from './record/DeskProvider.tsx';
import { openBrowserDesk } from './record/openBrowserDesk.ts';
import { makeRouter } from './routes.tsx';
import { applyTheme, readTheme } from './theme/themeChoice.ts';
import { WeighingsProvider } from './weigh/WeighingsProvider.tsx';
import './theme/fonts.css';
import './theme/tokens.css';
import './theme/base.css';
import './theme/controls.css';
import './theme/print.css';

applyTheme(readTheme());
const app = document.getElementById('app');
if (app === null) throw new Error('The page has no place for the screens.');
const keeper = openBrowserKeeper();
createRoot(app).render(
  <StrictMode>
    <DeskProvider desk={openBrowserDesk(keeper)}>
      <PhotoKeeperProvider keeper={keeper}>
        <AccessGate>
          <KnowledgeProvider>
            <WeighingsProvider>
              <RouterProvider router={makeRouter()} />
            </WeighingsProvider>
          </KnowledgeProvider>
        </AccessGate>
      </PhotoKeeperProvider>
    </DeskProvider>
  </StrictMode>,
);

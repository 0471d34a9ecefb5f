import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { KnowledgeProvider } from './knowledge/KnowledgeProvider.tsx';
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
createRoot(app).render(
  <StrictMode>
    <DeskProvider desk={openBrowserDesk()}>
      <KnowledgeProvider>
        <WeighingsProvider>
          <RouterProvider router={makeRouter()} />
        </WeighingsProvider>
      </KnowledgeProvider>
    </DeskProvider>
  </StrictMode>,
);

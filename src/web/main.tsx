import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { KnowledgeRoom } from './knowledge/KnowledgeRoom.tsx';
import { DeskRoom } from './record/DeskRoom.tsx';
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
const room = document.getElementById('room');
if (room === null) throw new Error('The page has no place for the screens.');
createRoot(room).render(
  <StrictMode>
    <DeskRoom desk={openBrowserDesk()}>
      <KnowledgeRoom>
        <WeighingsProvider>
          <RouterProvider router={makeRouter()} />
        </WeighingsProvider>
      </KnowledgeRoom>
    </DeskRoom>
  </StrictMode>,
);

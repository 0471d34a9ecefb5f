import { Link, Outlet, useLocation } from '@tanstack/react-router';
import { useEffect, useRef } from 'react';
import { BackupNotice } from '../backup/BackupNotice.tsx';
import { AwayBand } from '../offline/AwayBand.tsx';
import { NewerVersionNotice } from '../offline/NewerVersionNotice.tsx';
import { ElsewhereNotice } from './ElsewhereNotice.tsx';
import { Notice } from './Notice.tsx';
import { ReadOnlyBand } from './ReadOnlyBand.tsx';
import './layout.css';

/** The frame of every screen: skip link, name, the links, and the page. */
export function RootLayout() {
  const main = useRef<HTMLElement>(null);
  const { pathname } = useLocation();
  const shown = useRef(pathname);
  useEffect(() => {
    if (shown.current === pathname) return;
    shown.current = pathname;
    window.scrollTo(0, 0);
    main.current?.focus({ preventScroll: true });
  }, [pathname]);
  return (
    <>
      <a className="skip" href="#page">
        Skip to the page
      </a>
      <header className="house-top">
        <Link to="/" className="house-name" activeOptions={{ exact: true }}>
          Underside
        </Link>
        <nav className="doors" aria-label="Underside">
          <Link to="/" activeOptions={{ exact: true }}>
            Pieces
          </Link>
          <Link to="/reference">Reference</Link>
          <Link to="/settings">Settings</Link>
        </nav>
      </header>
      <NewerVersionNotice />
      <AwayBand />
      <ReadOnlyBand />
      <BackupNotice />
      <ElsewhereNotice />
      <main id="page" className="page" ref={main} tabIndex={-1}>
        <Outlet />
      </main>
    </>
  );
}

/** Shown for an address that leads nowhere. */
export function NotFound() {
  return (
    <Notice
      title="There is no such page"
      words="The address leads nowhere. Perhaps it was cut short when it was copied."
    >
      <Link to="/">Back to the pieces</Link>
    </Notice>
  );
}

/** Shown while a screen is fetched. */
export function Waiting() {
  return <Notice title="One moment" />;
}

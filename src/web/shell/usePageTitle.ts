import { useEffect } from 'react';

/** Names the page in the tab. */
export function usePageTitle(...names: string[]): void {
  const title = [...names.filter((name) => name !== ''), 'Underside'].join(' · ');
  useEffect(() => {
    document.title = title;
  }, [title]);
}

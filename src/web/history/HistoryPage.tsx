import { usePageTitle } from '../shell/usePageTitle.ts';

/** What was done. */
export function HistoryPage() {
  usePageTitle('History');
  return <h1>History</h1>;
}

import { usePageTitle } from '../shell/usePageTitle.ts';

/** Taking a new piece on. */
export function NewPiecePage() {
  usePageTitle('A new piece');
  return <h1>A new piece</h1>;
}

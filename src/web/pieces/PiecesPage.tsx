import { usePageTitle } from '../shell/usePageTitle.ts';

/** The pieces. */
export function PiecesPage() {
  usePageTitle('Pieces');
  return <h1>Pieces</h1>;
}

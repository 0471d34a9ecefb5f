import { usePageTitle } from '../shell/usePageTitle.ts';

/** The reference books. */
export function ReferencePage() {
  usePageTitle('Reference');
  return <h1>Reference</h1>;
}

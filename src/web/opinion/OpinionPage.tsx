import { usePageTitle } from '../shell/usePageTitle.ts';

/** The opinion. */
export function OpinionPage() {
  usePageTitle('Opinion');
  return <h1>Opinion</h1>;
}

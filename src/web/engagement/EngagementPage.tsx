import { usePageTitle } from '../shell/usePageTitle.ts';

/** The job. */
export function EngagementPage() {
  usePageTitle('Engagement');
  return <h1>Engagement</h1>;
}

import { usePageTitle } from '../shell/usePageTitle.ts';

/** This device. */
export function SettingsPage() {
  usePageTitle('Settings');
  return <h1>Settings</h1>;
}

import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { BackupSettings } from '../backup/BackupSettings.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { keepIdentity, readIdentity } from '../record/identity.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { chooseTheme, readTheme } from '../theme/themeChoice.ts';
import '../pieces/pieces.css';

/** This device: whose hand it is, its name, light or dark, the back-ups. */
export function SettingsPage() {
  usePageTitle('Settings');
  const [identity, setIdentity] = useState(readIdentity);
  const [theme, setTheme] = useState(readTheme);
  const set = (change: Partial<typeof identity>) => {
    keepIdentity({ ...identity, ...change });
    setIdentity(readIdentity());
  };
  return (
    <div className="new-piece">
      <h1>Settings</h1>
      <p className="soft">These belong to this browser on this device. They are saved as you type.</p>
      <TextField
        label="Your name"
        note="Written beside every act in the history, and set in new pieces as the examiner."
        value={identity.who}
        save={(who) => set({ who })}
        autoComplete="name"
      />
      <TextField
        label="Name of this device"
        note="So that the history says where something was entered."
        value={identity.device}
        save={(device) => set({ device })}
      />
      <ChoiceField
        label="Light or dark"
        choices={[
          { id: 'device', name: 'As the device is set' },
          { id: 'light', name: 'Light' },
          { id: 'dark', name: 'Dark' },
        ]}
        value={theme}
        save={(choice) => {
          chooseTheme(choice);
          setTheme(choice);
        }}
      />
      <section className="stack" aria-labelledby="other-devices">
        <h2 id="other-devices">Tablets and phones</h2>
        <p className="soft">Let another device in from the local network, or shut one out.</p>
        <p>
          <Link to="/devices">Devices</Link>
        </p>
      </section>
      <BackupSettings />
    </div>
  );
}

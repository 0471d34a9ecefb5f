import { useReadOnly } from '../record/useReadOnly.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { DeviceList } from './DeviceList.tsx';
import { useDoor } from './doorHere.ts';
import { NetworkSection } from './NetworkSection.tsx';
import { OwnSession } from './OwnSession.tsx';
import { PairingSection } from './PairingSection.tsx';
import { PassphraseSection } from './PassphraseSection.tsx';
import { SessionList } from './SessionList.tsx';
import { useAccess } from './useAccess.ts';
import '../pieces/pieces.css';
import './access.css';

/** Tablets and phones: who may come in over the network, and how a new device is let in. */
export function DevicesPage() {
  usePageTitle('Devices');
  const door = useDoor();
  const readOnly = useReadOnly();
  return (
    <div className="new-piece">
      <h1>Devices</h1>
      {door?.door === 'network' ? (
        <OwnSession device={door.device} />
      ) : readOnly === null ? (
        <AtHome />
      ) : (
        <p className="soft">This record is open read-only: devices are let in where it is worked in.</p>
      )}
    </div>
  );
}

function AtHome() {
  const { access, trouble, change } = useAccess();
  if (access === undefined) return <p className="soft">Looking at the devices…</p>;
  const { hasPassphrase, network, devices, sessions } = access;
  return (
    <>
      <p>
        At this computer nothing is asked of you. Nobody else comes in unless you open the network here, and
        then only by a passphrase or with a device that you paired. Nothing is sent to the internet.
      </p>
      {trouble === '' ? null : (
        <p className="caution" role="alert">
          {trouble}
        </p>
      )}
      <PassphraseSection hasPassphrase={hasPassphrase} change={change} />
      <NetworkSection network={network} hasPassphrase={hasPassphrase} change={change} />
      <PairingSection network={network} count={devices.length} />
      <DeviceList devices={devices} change={change} />
      <SessionList sessions={sessions} change={change} />
    </>
  );
}

import { useEffect, useRef, useState } from 'react';
import type { PairingCode } from '../../server/access/devices.ts';
import type { NetworkStanding } from '../../server/network/network.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { askAccess, troubleOf } from './askAccess.ts';
import { QrCode } from './QrCode.tsx';

/** Shows a code that lets one device in; it is gone from the screen as soon as it was used, or is too old. */
export function PairingSection({ network, count }: { network: NetworkStanding; count: number }) {
  const [code, setCode] = useState<PairingCode & { before: number }>();
  const [trouble, setTrouble] = useState('');
  const [said, setSaid] = useState('');
  const [address, setAddress] = useState('');
  const counted = useRef(count);
  counted.current = count;
  const at = network.addresses.includes(address) ? address : (network.addresses[0] ?? '');

  useEffect(() => {
    if (code === undefined) return;
    const timer = setTimeout(() => {
      setCode(undefined);
      setSaid('The code was not used in time: show a new one.');
    }, code.ends - Date.now());
    return () => clearTimeout(timer);
  }, [code]);
  useEffect(() => {
    if (code === undefined || count <= code.before) return;
    setCode(undefined);
    setSaid('The device is paired: it stands in the list below.');
  }, [code, count]);

  const show = async () => {
    const asked = await askAccess<PairingCode>('code', {});
    setSaid('');
    setTrouble(troubleOf(asked));
    if (asked.came === 'answer') setCode({ ...asked.answer, before: counted.current });
  };
  const hide = () => {
    setCode(undefined);
    void askAccess('code/drop', {});
  };
  return (
    <section className="stack" aria-labelledby="pairing">
      <h2 id="pairing">3. Pair a device</h2>
      {said === '' ? null : <p role="status">{said}</p>}
      {trouble === '' ? null : (
        <p className="caution" role="alert">
          {trouble}
        </p>
      )}
      {!network.isOpen ? (
        <p className="soft">First open the local network above.</p>
      ) : code === undefined ? (
        <div className="row">
          <button type="button" className="button" onClick={() => void show()}>
            Show a code
          </button>
        </div>
      ) : (
        <div className="pairing">
          <QrCode text={`${at}pair#${code.code}`} label="Code to be read by the camera of the device" />
          <div className="stack">
            <p>Point the camera of the device at the code and open what it finds.</p>
            <p>
              Or open <strong>{`${at}pair`}</strong> on it and type
            </p>
            <p className="spelled">{code.code.match(/.{1,4}/g)?.join(' ')}</p>
            <p className="soft">Good for ten minutes, and for one device.</p>
            {network.addresses.length > 1 ? (
              <ChoiceField
                label="Address in the code"
                note="If the device finds nothing, try another. A device keeps what it has not handed over under the address it was paired at: give this computer a fixed address in the router, or use the one that ends in .local if your devices find it."
                choices={network.addresses.map((each) => ({ id: each, name: each }))}
                value={at}
                save={setAddress}
              />
            ) : null}
            <div className="row">
              <button type="button" className="button quiet" onClick={hide}>
                Take the code back
              </button>
            </div>
          </div>
        </div>
      )}
    </section>
  );
}

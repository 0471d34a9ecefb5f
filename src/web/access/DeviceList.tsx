import { useState } from 'react';
import type { ShownDevice } from '../../server/access/homeAccessRoutes.ts';
import { momentWords } from './momentWords.ts';

/** The paired devices, each to be shut out at once. */
export function DeviceList({
  devices,
  change,
}: {
  devices: readonly ShownDevice[];
  change: (path: string) => Promise<string>;
}) {
  const [asked, setAsked] = useState('');
  const shutOut = async (id: string) => {
    await change(`devices/${id}/shut-out`);
    setAsked('');
  };
  return (
    <section className="stack" aria-labelledby="devices">
      <h2 id="devices">Paired devices</h2>
      {devices.length === 0 ? (
        <p className="soft">
          No device is paired yet. The three steps above take a few minutes for the first one.
        </p>
      ) : (
        <ul className="device-list">
          {devices.map(({ id, name, paired, seen, isOut }) => (
            <li key={id}>
              <div>
                <strong>{name}</strong>
                <span className="soft">
                  Paired {momentWords(paired)}; {isOut ? 'shut out' : `last seen ${momentWords(seen)}`}
                </span>
              </div>
              {isOut ? (
                <span className="mark">shut out</span>
              ) : asked === id ? (
                <div className="row">
                  <p>What it has not handed over stays on it. It has to be paired anew to come in again.</p>
                  <button type="button" className="button" onClick={() => void shutOut(id)}>
                    Shut out {name}
                  </button>
                  <button type="button" className="button plain" onClick={() => setAsked('')}>
                    Cancel
                  </button>
                </div>
              ) : (
                <button
                  type="button"
                  className="button quiet"
                  aria-label={`Shut out ${name}…`}
                  onClick={() => setAsked(id)}
                >
                  Shut out…
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

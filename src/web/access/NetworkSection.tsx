import type { NetworkStanding } from '../../server/network/network.ts';

/** Opens the local network and shuts it; what a device needs to trust this computer. */
export function NetworkSection({
  network,
  hasPassphrase,
  change,
}: {
  network: NetworkStanding;
  hasPassphrase: boolean;
  change: (path: string) => Promise<string>;
}) {
  return (
    <section className="stack" aria-labelledby="network">
      <h2 id="network">2. Local network</h2>
      {network.never === null ? null : <p className="caution">{network.never}</p>}
      {network.isOpen ? (
        <Open network={network} close={() => void change('network/close')} />
      ) : (
        <>
          <p>The network is shut: Underside answers on this computer only.</p>
          <div className="row">
            <button
              type="button"
              className="button"
              disabled={!hasPassphrase || network.never !== null}
              onClick={() => void change('network/open')}
            >
              Open to the local network
            </button>
          </div>
          <p className="soft">
            {hasPassphrase
              ? 'It stays open until you shut it here or close Underside. Open it in networks you trust: at home or in the office, not in a café.'
              : 'First choose a passphrase above.'}
          </p>
        </>
      )}
    </section>
  );
}

function Open({ network, close }: { network: NetworkStanding; close: () => void }) {
  return (
    <>
      <div className="row">
        <p role="status">The network is open: paired devices come in, and others by the passphrase.</p>
        <button type="button" className="button quiet" onClick={close}>
          Shut it
        </button>
      </div>
      <p>A device has to trust this computer once. Open one of these pages on it and follow the pictures:</p>
      <ul className="trust-pages">
        {network.trustPages.map((page) => (
          <li key={page}>
            <a href={page} target="_blank" rel="noreferrer">
              {page}
            </a>
          </li>
        ))}
      </ul>
      <p>
        The page shows these pairs. If one differs on the device, stop there; you can also carry{' '}
        <a href="/api/access/authority.crt" download>
          the certificate
        </a>{' '}
        to the device on a stick.
      </p>
      <p className="pairs">
        {network.fingerprint?.match(/.{1,24}/g)?.map((line) => (
          <span key={line}>{line.trim()}</span>
        ))}
      </p>
    </>
  );
}

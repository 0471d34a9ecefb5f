import type { Draft } from './readDivision.ts';

type Props = { draft: Draft; type: (draft: Draft) => void };

const sets = ['', 'A', 'B', 'C', 'D'];
const mostHeirs = 8;

/** Pieces down, heirs across, a figure in each cell; pieces of one letter stay together. */
export function BidTable({ draft, type }: Props) {
  const { heirs, items } = draft;
  const setHeir = (at: number, name: string) =>
    type({ ...draft, heirs: heirs.map((each, index) => (index === at ? name : each)) });
  const setItem = (at: number, to: Partial<Draft['items'][number]>) =>
    type({ ...draft, items: items.map((each, index) => (index === at ? { ...each, ...to } : each)) });
  const addHeir = () =>
    type({
      ...draft,
      heirs: [...heirs, ''],
      items: items.map((each) => ({ ...each, bids: [...each.bids, ''] })),
    });
  const dropHeir = () =>
    type({
      ...draft,
      heirs: heirs.slice(0, -1),
      items: items.map((each) => ({ ...each, bids: each.bids.slice(0, heirs.length - 1) })),
    });
  return (
    <div className="stack-tight">
      <div className="division-scroll">
        <table className="division-bids">
          <caption className="unseen">What each piece is worth to each heir</caption>
          <thead>
            <tr>
              <th scope="col">Piece</th>
              <th scope="col">Stays with</th>
              {heirs.map((name, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: an heir is known by the column
                <th key={at} scope="col">
                  <label>
                    Heir {at + 1}
                    <input
                      type="text"
                      autoComplete="off"
                      value={name}
                      onChange={(change) => setHeir(at, change.target.value)}
                    />
                  </label>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {items.map((item, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a piece is known by its row
              <tr key={row}>
                <th scope="row">
                  <input
                    type="text"
                    autoComplete="off"
                    aria-label={`Piece ${row + 1}`}
                    value={item.name}
                    onChange={(change) => setItem(row, { name: change.target.value })}
                  />
                </th>
                <td>
                  <select
                    aria-label={`Piece ${row + 1} stays with`}
                    value={item.set}
                    onChange={(change) => setItem(row, { set: change.target.value })}
                  >
                    {sets.map((set) => (
                      <option key={set} value={set}>
                        {set === '' ? 'none' : `set ${set}`}
                      </option>
                    ))}
                  </select>
                </td>
                {heirs.map((heir, at) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: an heir is known by the column
                  <td key={at}>
                    <input
                      type="text"
                      inputMode="decimal"
                      autoComplete="off"
                      aria-label={`${item.name || `Piece ${row + 1}`} for ${heir || `heir ${at + 1}`}`}
                      value={item.bids[at] ?? ''}
                      onChange={(change) =>
                        setItem(row, {
                          bids: heirs.map((_, index) =>
                            index === at ? change.target.value : (item.bids[index] ?? ''),
                          ),
                        })
                      }
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="row">
        <button
          type="button"
          className="button quiet"
          onClick={() =>
            type({ ...draft, items: [...items, { name: '', set: '', bids: heirs.map(() => '') }] })
          }
        >
          Add a piece
        </button>
        <button type="button" className="button quiet" disabled={heirs.length >= mostHeirs} onClick={addHeir}>
          Add an heir
        </button>
        <button type="button" className="button plain" disabled={heirs.length <= 2} onClick={dropHeir}>
          Delete the last heir
        </button>
        <button
          type="button"
          className="button plain"
          disabled={items.length <= 1}
          onClick={() => type({ ...draft, items: items.slice(0, -1) })}
        >
          Delete the last piece
        </button>
      </div>
    </div>
  );
}

import './plots.css';

type Props = {
  caption: string;
  heads: readonly string[];
  /** The first cell of each row heads it. */
  rows: readonly (readonly [head: string | number, ...cells: (string | number)[]])[];
};

/** What a figure shows, as a table folded away beneath it: for whoever reads it by ear, or wants the numbers. */
export function FigureTable({ caption, heads, rows }: Props) {
  return (
    <details>
      <summary>As a table</summary>
      <table className="plot-table">
        <caption>{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([head, ...cells]) => (
            <tr key={head}>
              <th scope="row">{head}</th>
              {cells.map((cell, index) => (
                <td key={heads[index + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

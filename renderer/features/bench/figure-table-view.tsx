import type { FigureTable } from "./drawing-table.ts";

interface FigureTableViewProps {
  readonly label: string;
  readonly table: FigureTable;
}

/** The figures behind a picture: for who reads with the ears, and for who wants the number. */
export function FigureTableView({ label, table }: FigureTableViewProps) {
  const isNumber = (text: string): boolean => /^[+\u2212±]?[\d.]+$/.test(text);
  return (
    <table className="table figure-table" aria-label={label}>
      <thead>
        <tr>
          {table.heads.map((words, index) => (
            <th key={words} scope="col" className={isNumber(table.rows[0]?.[index] ?? "") ? "number" : ""}>
              {words}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row) => (
          <tr key={row.join(" ")}>
            {row.map((text, index) => (
              <td key={table.heads[index]} className={isNumber(text) ? "number" : ""}>
                {text}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

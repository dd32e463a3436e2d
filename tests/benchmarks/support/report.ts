/** The value below which the given share of the measurements lies. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** Milliseconds one call takes. */
export async function timed(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

export interface Row {
  readonly what: string;
  readonly [column: string]: string | number;
}

export function printTable(title: string, rows: readonly Row[]): void {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const text = (value: string | number | undefined): string =>
    typeof value === "number" ? (value >= 100 ? value.toFixed(0) : value.toFixed(2)) : (value ?? "");
  const widths = columns.map((column) =>
    Math.max(column.length, ...rows.map((row) => text(row[column]).length)),
  );
  const line = (cells: readonly string[]): string =>
    `  ${cells.map((cell, index) => (index === 0 ? cell.padEnd(widths[index] ?? 0) : cell.padStart(widths[index] ?? 0))).join("  ")}`;
  console.log(`\n  ${title}`);
  console.log(line(columns));
  for (const row of rows) console.log(line(columns.map((column) => text(row[column]))));
}

/**
 * BM25 (k1 1.2, b 0.75) of one row of an FTS4 table from `matchinfo(table, 'pcnalx')`, summed over columns.
 *
 * @param blob the column as SQLite gives it: 32-bit numbers in the machine's byte order
 */
export function bm25OfMatchInfo(blob: Uint8Array): number {
  const info = new Uint32Array(blob.slice().buffer);
  const [phrases = 0, columns = 0, documents = 0] = info;
  const averages = 3;
  const lengths = averages + columns;
  const hits = lengths + columns;
  let score = 0;
  for (let phrase = 0; phrase < phrases; phrase++) {
    for (let column = 0; column < columns; column++) {
      const at = hits + 3 * (phrase * columns + column);
      const count = info[at] ?? 0;
      if (count === 0) continue;
      const frequency = info[at + 2] ?? 0;
      const rarity = Math.log(1 + (documents - frequency + 0.5) / (frequency + 0.5));
      const length = (info[lengths + column] ?? 0) / Math.max(1, info[averages + column] ?? 1);
      score += (rarity * count * 2.2) / (count + 1.2 * (0.25 + 0.75 * length));
    }
  }
  return score;
}

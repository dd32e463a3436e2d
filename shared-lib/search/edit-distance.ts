const rowLength = 68;
// Kept between calls: a look through the vocabulary makes tens of thousands.
let beforeLast = new Int32Array(rowLength);
let last = new Int32Array(rowLength);
let current = new Int32Array(rowLength);

/**
 * Edits between two words (insert, delete, replace, swap of neighbours; optimal string alignment), or `limit` + 1
 * as soon as it is certain that there are more than `limit`. Words longer than 66 UTF-16 units count as too far.
 */
export function editDistance(left: string, right: string, limit: number): number {
  const tooFar = limit + 1;
  if (Math.abs(left.length - right.length) > limit || Math.max(left.length, right.length) >= rowLength - 1) {
    return left === right ? 0 : tooFar;
  }
  for (let column = 0; column <= right.length; column++) {
    last[column] = column;
  }
  for (let row = 1; row <= left.length; row++) {
    const smallest = fillRow(left, right, row, limit);
    if (smallest > limit) {
      return tooFar;
    }
    [beforeLast, last, current] = [last, current, beforeLast];
  }
  return Math.min(last[right.length] ?? tooFar, tooFar);
}

function fillRow(left: string, right: string, row: number, limit: number): number {
  const letter = left.charCodeAt(row - 1);
  const letterBefore = row > 1 ? left.charCodeAt(row - 2) : -1;
  const from = Math.max(1, row - limit);
  const to = Math.min(right.length, row + limit);
  current[from - 1] = from === 1 ? row : limit + 1;
  let smallest = current[from - 1] as number;
  for (let column = from; column <= to; column++) {
    const other = right.charCodeAt(column - 1);
    // Cells outside the band hold what an earlier row left there; they count as "too far".
    const above = column < row + limit ? (last[column] as number) : limit + 1;
    let best = Math.min(above, current[column - 1] as number) + 1;
    best = Math.min(best, (last[column - 1] as number) + (letter === other ? 0 : 1));
    if (column > 1 && letterBefore === other && letter === right.charCodeAt(column - 2)) {
      best = Math.min(best, (beforeLast[column - 2] as number) + 1);
    }
    current[column] = best;
    smallest = Math.min(smallest, best);
  }
  return smallest;
}

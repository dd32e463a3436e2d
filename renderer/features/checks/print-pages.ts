/** The height of an A4 sheet between its margins, as print.css has it, in CSS pixels. */
export const sheetHeight = (276 / 25.4) * 96;

/**
 * Rows page by page, in their order; a row is never cut in two, and a row higher than a page has one of its own.
 * @param heights of the rows, px
 * @param firstRoom for rows on the first page, where the record's head stands, px
 * @param room for rows on every other page, px
 * @returns for each page the indexes of its rows; one empty page where there are no rows
 */
export function packRows(
  heights: readonly number[],
  firstRoom: number,
  room: number,
): readonly (readonly number[])[] {
  const pages: number[][] = [[]];
  let left = firstRoom;
  for (const [row, height] of heights.entries()) {
    const isEmpty = pages.at(-1)?.length === 0;
    // A first page whose head leaves no room for its first row still carries the head alone.
    if (height > left && (!isEmpty || pages.length === 1)) {
      pages.push([]);
      left = room;
    }
    pages.at(-1)?.push(row);
    left -= height;
  }
  return pages;
}

/**
 * A spreadsheet takes a cell of a CSV file for a formula when it begins with one of these signs, their full-width forms
 * included (OWASP, "CSV Injection"). An apostrophe before it makes it text; the import takes that apostrophe off again.
 */
const formulaStart = /^[=+\-@\t\r\n＝＋－＠]/;
/** What already has apostrophes before such a sign gets one more, so that taking one off gives back any text. */
const toGuard = /^'*[=+\-@\t\r\n＝＋－＠]/;
const guarded = /^'+[=+\-@\t\r\n＝＋－＠]/;

/** Text as it stands in a CSV cell, so that no spreadsheet works it out. */
export function guardCell(text: string): string {
  return toGuard.test(text) ? `'${text}` : text;
}

/** The text of a CSV cell that may have been guarded: what `guardCell` was given. */
export function unguardCell(cell: string): string {
  return guarded.test(cell) ? cell.slice(1) : cell;
}

/** Whether a spreadsheet would take the cell for a formula. A plain number such as -1.5 stays a number. */
export function startsFormula(cell: string): boolean {
  return formulaStart.test(cell) && !/^-?\d+(?:\.\d+)?(?:e[+-]\d+)?$/.test(cell);
}

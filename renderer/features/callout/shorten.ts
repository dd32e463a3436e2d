/** For a sheet that must stay one page: what is longer is cut, and says so. */
export function shorten(text: string, letters: number): string {
  return text.length <= letters ? text : `${text.slice(0, letters).trimEnd()} … (more in the program)`;
}

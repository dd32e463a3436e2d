export const delimiters = [",", ";", "\t"] as const;
export type Delimiter = (typeof delimiters)[number];

const linesLookedAt = 50;

/** The sign between the columns: the one that stands equally often in most lines, outside of quotation marks. */
export function findDelimiter(text: string): Delimiter {
  const lines = firstRecords(text);
  let best: { readonly delimiter: Delimiter; readonly worth: number } = { delimiter: ",", worth: 0 };
  for (const delimiter of delimiters) {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const count = line.split(delimiter).length - 1;
      if (count > 0) counts.set(count, (counts.get(count) ?? 0) + 1);
    }
    for (const [count, lineCount] of counts) {
      const worth = lineCount * lineCount * count;
      if (worth > best.worth) best = { delimiter, worth };
    }
  }
  return best.delimiter;
}

/** The first records with everything between quotation marks taken out. */
function firstRecords(text: string): string[] {
  const lines: string[] = [];
  let line = "";
  let quoted = false;
  for (let at = 0; at < text.length && lines.length < linesLookedAt; at++) {
    const sign = text[at] as string;
    if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === "\n" || sign === "\r")) {
      if (line) lines.push(line);
      line = "";
    } else if (!quoted) line += sign;
  }
  if (line) lines.push(line);
  return lines;
}

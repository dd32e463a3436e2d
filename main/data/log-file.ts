import fs from "node:fs";

export type LogLevel = "information" | "warning" | "error";

export interface LogFileOptions {
  /** Size in bytes at which a new file is begun. */
  readonly maximumBytes?: number;
  /** How many files are kept, the current one included. */
  readonly files?: number;
}

export interface LogFile {
  /** One line of JSON. Never throws: what cannot be written is counted and told in the next line that can. */
  write(level: LogLevel, message: string, facts?: Readonly<Record<string, unknown>>): void;
}

/** A log whose oldest part is forgotten: `sillbook.log`, `sillbook.log.1` (older), ... */
export function openLogFile(
  file: string,
  { maximumBytes = 1_000_000, files = 5 }: LogFileOptions = {},
): LogFile {
  let lost = 0;
  return {
    write(level, message, facts = {}) {
      try {
        const entry = { at: new Date().toISOString(), level, message, ...(lost > 0 ? { lost } : {}), facts };
        const line = `${toLine(entry, maximumBytes)}\n`;
        const size = fs.statSync(file, { throwIfNoEntry: false })?.size ?? 0;
        if (size > 0 && size + Buffer.byteLength(line) > maximumBytes) rotate(file, files);
        fs.appendFileSync(file, line, { mode: 0o600 });
        lost = 0;
      } catch {
        lost += 1;
      }
    },
  };
}

function rotate(file: string, files: number): void {
  for (let age = files - 1; age >= 1; age -= 1) {
    const newer = age === 1 ? file : `${file}.${age - 1}`;
    if (fs.existsSync(newer)) fs.renameSync(newer, `${file}.${age}`);
  }
  if (files === 1) fs.truncateSync(file, 0);
}

// An entry larger than a whole file keeps its message, shortened, and loses its facts.
function toLine(entry: { readonly message: string }, maximumBytes: number): string {
  const line = writeJson(entry);
  if (Buffer.byteLength(line) < maximumBytes) return line;
  return writeJson({ ...entry, message: entry.message.slice(0, 1000), facts: { shortened: true } });
}

function writeJson(entry: unknown): string {
  const above: { readonly value: object; readonly shown: object }[] = [];
  return JSON.stringify(entry, function (this: unknown, _key, value: unknown) {
    if (typeof value === "bigint") return value.toString();
    if (typeof value !== "object" || value === null) return value;
    // `this` is the object that holds the value: what stands above it is the path from the root.
    while (above.length > 0 && above.at(-1)?.shown !== this) above.pop();
    if (above.some((outer) => outer.value === value)) return "(refers to itself)";
    const shown = value instanceof Error ? describeError(value) : value;
    above.push({ value, shown });
    return shown;
  });
}

function describeError(error: Error): Record<string, unknown> {
  const { name, message, stack, cause } = error;
  return { ...error, name, message, stack, ...(cause === undefined ? {} : { cause }) };
}

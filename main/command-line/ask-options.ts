import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { defaultDataFolder } from "../data/data-folder.ts";
import type { TableStep } from "./bring-in-table.ts";

export const askUsage = `Usage: npm run --silent ask -- [--data <folder>] [--as <person>] <operation> [input.json | -]
       npm run --silent ask -- [--data <folder>] [--as <person>] --lines
       npm run --silent ask -- [--data <folder>] [--as <person>] --table <file> look|preview|bring-in [mapping.json | -]
       npm run --silent ask -- [--data <folder>] --list <name> --save <file.csv | file.xlsx> [input.json | -]
       npm run --silent ask -- operations
  operations         list every operation with its input and output schema
  --data <folder>    the data folder (default: the usual place)
  --as <person>      the name or id of the person who writes
  --lines            one {"operation": "...", "input": {...}} per line of standard input, one answer per line
  --table <file>     a CSV or XLSX table of old records: look at it, preview what bringing it in does, or bring it in
  --refused <file>   with --table bring-in: where the refused rows are written, to be corrected and brought again
  --list <name>      a list as the screens show it, saved as a table; the input is that of the operation behind it
  input.json | -     the input as a file, or from standard input (default: {})
Answers are JSON on standard output. Exit code 1: an answer was a failure. 2: the command was not understood.`;

const tableSteps: readonly TableStep[] = ["look", "preview", "bring-in"];

export type AskCommand =
  | {
      readonly kind: "list-file";
      readonly folder: string;
      readonly as: string | undefined;
      readonly list: string;
      readonly file: string;
      readonly input: string | undefined;
    }
  | { readonly kind: "list" }
  | { readonly kind: "lines"; readonly folder: string; readonly as: string | undefined }
  | {
      readonly kind: "table";
      readonly folder: string;
      readonly as: string | undefined;
      readonly file: string;
      readonly step: TableStep;
      readonly refusedFile: string | null;
      readonly input: string | undefined;
    }
  | {
      readonly kind: "one";
      readonly folder: string;
      readonly as: string | undefined;
      readonly operation: string;
      /** A file name, `-` for standard input, or undefined for `{}`. */
      readonly input: string | undefined;
    };

/** @returns the command, or the sentence saying what is wrong with it. */
export function readAskCommand(args: readonly string[]): AskCommand | { readonly problem: string } {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (error) {
    return { problem: (error as Error).message };
  }
  const { values, positionals } = parsed;
  const [operation, input, ...rest] = positionals;
  if (values.data === "") return { problem: "--data needs the name of a folder." };
  const folder = values.data === undefined ? defaultDataFolder() : resolve(values.data);
  if (values.lines) {
    if (operation !== undefined) return { problem: "--lines reads its operations from standard input." };
    return { kind: "lines", folder, as: values.as };
  }
  if (values.list !== undefined) return readListCommand(values, positionals, folder);
  if (operation === undefined) return { problem: "Which operation?" };
  if (values.table !== undefined)
    return readTableCommand(values.table, values.refused ?? null, {
      folder,
      as: values.as,
      operation,
      input,
    });
  if (rest.length > 0)
    return { problem: `One operation and one input at a time, not "${rest.join(" ")}" too.` };
  if (operation === "operations") {
    return input === undefined ? { kind: "list" } : { problem: "operations takes no input." };
  }
  return { kind: "one", folder, as: values.as, operation, input };
}

function readListCommand(
  { list = "", save, as }: ReturnType<typeof parse>["values"],
  [input, ...rest]: readonly string[],
  folder: string,
): AskCommand | { readonly problem: string } {
  if (!save) return { problem: "--list needs --save and the name of a file that ends with .csv or .xlsx." };
  if (rest.length > 0) return { problem: "--list takes one input, and no operation." };
  return { kind: "list-file", folder, as, list, file: resolve(save), input };
}

function readTableCommand(
  file: string,
  refusedFile: string | null,
  rest: { folder: string; as: string | undefined; operation: string; input: string | undefined },
): AskCommand | { readonly problem: string } {
  const step = tableSteps.find((one) => one === rest.operation);
  if (!step) return { problem: `--table takes look, preview or bring-in, not "${rest.operation}".` };
  if (file === "") return { problem: "--table needs the name of a file." };
  const { folder, as, input } = rest;
  return {
    kind: "table",
    folder,
    as,
    file: resolve(file),
    step,
    refusedFile: refusedFile === null ? null : resolve(refusedFile),
    input,
  };
}

function parse(args: readonly string[]) {
  return parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      data: { type: "string" },
      as: { type: "string" },
      lines: { type: "boolean" },
      table: { type: "string" },
      refused: { type: "string" },
      list: { type: "string" },
      save: { type: "string" },
    },
  });
}

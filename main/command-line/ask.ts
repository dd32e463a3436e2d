import { once } from "node:events";
import { readFile } from "node:fs/promises";
import { text } from "node:stream/consumers";
import type { Envelope } from "#shared-lib/contract/operation.ts";
import { type AskConnection, connectToFolder, requireFolderFor } from "./ask-connection.ts";
import { answerLines } from "./ask-lines.ts";
import { type AskCommand, askUsage, readAskCommand } from "./ask-options.ts";
import { asker, workOnTable } from "./bring-in-table.ts";
import { envelopeOfError, failedEnvelope } from "./failed-envelope.ts";
import { operationList } from "./operation-list.ts";
import { saveListFile } from "./save-list-file.ts";

// A reader that has seen enough (`... | head -1`) closes the pipe: that ends the work, and is no defect.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit(1);
});

process.exitCode = await ask(process.argv.slice(2));

async function ask(args: readonly string[]): Promise<number> {
  const command = readAskCommand(args);
  if ("problem" in command) {
    process.stderr.write(`${command.problem}\n\n${askUsage}\n`);
    return 2;
  }
  if (command.kind === "list") {
    await print(`${JSON.stringify(operationList(), null, 2)}\n`);
    return 0;
  }
  if (command.kind === "lines") return askLines(command);
  const envelope = await answer(command).catch(envelopeOfError);
  await print(`${JSON.stringify(envelope, null, 2)}\n`);
  return envelope.ok ? 0 : 1;
}

function answer(command: Exclude<AskCommand, { kind: "list" | "lines" }>): Promise<Envelope> {
  if (command.kind === "table") return answerTable(command);
  return command.kind === "list-file" ? answerListFile(command) : answerOne(command);
}

async function answerListFile(command: AskCommand & { kind: "list-file" }): Promise<Envelope> {
  const read = await readInput(command.input);
  if ("problem" in read) return failedEnvelope("input-invalid", read.problem);
  return withConnection(command.folder, async ({ request }) => ({
    ok: true,
    value: await saveListFile(asker({ request, as: command.as }), { ...command, input: read.value }),
  }));
}

async function answerTable(command: AskCommand & { kind: "table" }): Promise<Envelope> {
  const read = await readInput(command.input);
  if ("problem" in read) return failedEnvelope("input-invalid", read.problem);
  return withConnection(command.folder, async ({ request }) => ({
    ok: true,
    value: await workOnTable({
      ...command,
      mapping: read.value,
      request,
      progress: (done, of) => process.stderr.write(`${done} of ${of} rows\n`),
    }),
  }));
}

async function answerOne({ folder, as, operation, input }: AskCommand & { kind: "one" }): Promise<Envelope> {
  const read = await readInput(input);
  if ("problem" in read) return failedEnvelope("input-invalid", read.problem);
  requireFolderFor(operation, folder);
  return withConnection(folder, (connection) => connection.request({ operation, input: read.value, as }));
}

async function askLines({ folder, as }: AskCommand & { kind: "lines" }): Promise<number> {
  try {
    const allGood = await withConnection(folder, ({ request }) =>
      answerLines({ input: process.stdin, write: print, request, as }),
    );
    return allGood ? 0 : 1;
  } catch (error) {
    await print(`${JSON.stringify(envelopeOfError(error))}\n`);
    return 1;
  }
}

async function withConnection<Result>(
  folder: string,
  work: (connection: AskConnection) => Promise<Result>,
): Promise<Result> {
  const connection = await connectToFolder(folder);
  try {
    return await work({ request: (request) => connection.request(request), close: () => connection.close() });
  } finally {
    await connection.close();
  }
}

async function readInput(input: string | undefined): Promise<{ value: unknown } | { problem: string }> {
  if (input === undefined) return { value: {} };
  let json: string;
  try {
    json = input === "-" ? await text(process.stdin) : await readFile(input, "utf8");
  } catch (error) {
    return { problem: `The input cannot be read: ${(error as Error).message}` };
  }
  try {
    return { value: JSON.parse(json) };
  } catch (error) {
    return { problem: `The input is not valid JSON: ${(error as Error).message}` };
  }
}

async function print(line: string): Promise<void> {
  if (!process.stdout.write(line)) await once(process.stdout, "drain");
}

import { createInterface } from "node:readline";
import type { Readable } from "node:stream";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import { envelopeOfError, failedEnvelope } from "./failed-envelope.ts";
import { isOperationRequest, requestFormMessage } from "./operation-request.ts";

export interface LinesOptions {
  readonly input: Readable;
  /** Writes one answer; resolves when the next may follow, so that a slow reader slows the work and nothing piles up. */
  write(line: string): Promise<void>;
  request(request: OperationRequest): Promise<Envelope>;
  /** Who writes, where a line does not say. */
  readonly as: string | undefined;
}

/**
 * Answers one line for each line that is not blank, in order; the next request is sent when the one before is answered,
 * as a later line may depend on an earlier one.
 * @returns whether every answer was a success.
 */
export async function answerLines({ input, write, request, as }: LinesOptions): Promise<boolean> {
  let lineNumber = 0;
  let allGood = true;
  for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
    lineNumber += 1;
    if (line.trim() === "") continue;
    const envelope = await answerLine(line, lineNumber, request, as);
    allGood &&= envelope.ok;
    await write(`${JSON.stringify(envelope)}\n`);
  }
  return allGood;
}

async function answerLine(
  line: string,
  lineNumber: number,
  request: LinesOptions["request"],
  as: string | undefined,
): Promise<Envelope> {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return failedEnvelope("input-invalid", `Line ${lineNumber} is not valid JSON.`, { line: lineNumber });
  }
  if (!isOperationRequest(value)) {
    return failedEnvelope("input-invalid", `Line ${lineNumber}: ${requestFormMessage}`, { line: lineNumber });
  }
  try {
    return await request({ operation: value.operation, input: value.input ?? {}, as: value.as ?? as });
  } catch (error) {
    return envelopeOfError(error);
  }
}

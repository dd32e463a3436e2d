import type { Envelope } from "#shared-lib/contract/operation.ts";
import { type ErrorCode, type ErrorDetails, errorWords, SillbookError } from "#shared-lib/errors.ts";

/** The envelope of a failure that a door itself found, before or after the data worker was asked. */
export function failedEnvelope(
  code: ErrorCode,
  message: string = errorWords[code],
  details: ErrorDetails = {},
): Envelope {
  return { ok: false, error: { code, message, details } };
}

/** The envelope of something thrown on the way. */
export function envelopeOfError(error: unknown): Envelope {
  if (error instanceof SillbookError) return failedEnvelope(error.code, error.message, error.details);
  return failedEnvelope("unexpected", error instanceof Error ? error.message : String(error));
}

/** The same failure as text for a terminal: the message, then its plain facts one a line. */
export function failureText(error: unknown): string {
  if (!(error instanceof SillbookError))
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  const facts = Object.entries(error.details).map(([name, fact]) => `  ${name}: ${factText(fact)}`);
  return [error.message, ...facts].join("\n");
}

function factText(fact: unknown): string {
  return typeof fact === "string" ? fact : JSON.stringify(fact);
}

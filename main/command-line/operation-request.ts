import type { OperationRequest } from "#shared-lib/contract/operation.ts";

/**
 * Whether a value from outside has the outer form of a request. What is inside `input` is for the dispatcher to judge.
 */
export function isOperationRequest(value: unknown): value is OperationRequest {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
  const { operation, as } = value as Record<string, unknown>;
  return typeof operation === "string" && (as === undefined || typeof as === "string");
}

export const requestFormMessage =
  'A request has the form {"operation": "...", "input": {...}}, with "as" naming the person who writes.';

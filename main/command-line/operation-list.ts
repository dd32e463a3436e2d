import { z } from "zod";
import type { Operation } from "#shared-lib/contract/operation.ts";
import { operations } from "#shared-lib/contract/operations.ts";

export interface OperationEntry {
  readonly operation: string;
  readonly kind: Operation["kind"];
  readonly summary: string;
  /** JSON Schema, draft 2020-12, of what a caller passes. */
  readonly input: unknown;
  /** JSON Schema of `value` in a successful answer. */
  readonly output: unknown;
}

/** Every operation of the contract with its schemas, as `ask operations` prints it. */
export function operationList(): OperationEntry[] {
  return Object.entries<Operation>(operations).map(([operation, { kind, summary, input, output }]) => ({
    operation,
    kind,
    summary,
    input: z.toJSONSchema(input, { io: "input" }),
    output: z.toJSONSchema(output, { io: "output" }),
  }));
}

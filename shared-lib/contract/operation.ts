import type { z } from "zod";
import type { ErrorCode, ErrorDetails } from "../errors.ts";

/**
 * `read` never changes the store. `write` needs the name of the person, is one transaction and leaves change rows.
 * `unsigned` is a transaction that needs no person (drafts, who is sitting here, first start).
 * `maintenance` runs outside a transaction (backup, restore).
 */
export type OperationKind = "read" | "write" | "unsigned" | "maintenance";

export interface Operation<Input extends z.ZodType = z.ZodType, Output extends z.ZodType = z.ZodType> {
  readonly kind: OperationKind;
  /** One sentence in plain words; shown by `ask operations`. */
  readonly summary: string;
  readonly input: Input;
  readonly output: Output;
}

type Declare<Kind extends OperationKind> = <Input extends z.ZodType, Output extends z.ZodType>(
  summary: string,
  input: Input,
  output: Output,
) => Operation<Input, Output> & { readonly kind: Kind };

function declare<Kind extends OperationKind>(kind: Kind): Declare<Kind> {
  return (summary, input, output) => ({ kind, summary, input, output });
}

export const read = declare("read");
export const write = declare("write");
export const unsigned = declare("unsigned");
export const maintenance = declare("maintenance");

/** What a door sends to the data worker. `as` is the id or the exact name of a person. */
export interface OperationRequest {
  readonly operation: string;
  readonly input: unknown;
  readonly as?: string | undefined;
}

export type Envelope<Value = unknown> =
  | { readonly ok: true; readonly value: Value }
  | {
      readonly ok: false;
      readonly error: { readonly code: ErrorCode; readonly message: string; readonly details: ErrorDetails };
    };

/** Named in a "changed" event when anything may have changed: a backup was put in place, or events were lost. */
export const anyEntity = "*";

/** The one event stream from the data worker to the screens. */
export type ProgramEvent =
  | {
      readonly kind: "changed";
      readonly records: readonly { readonly entity: string; readonly id: string }[];
      readonly at: string;
    }
  | {
      readonly kind: "progress";
      readonly work: string;
      readonly done: number;
      readonly of: number;
      readonly words: string;
    };

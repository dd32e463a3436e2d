import type { OperationName, OutputOf, ParsedInputOf } from "#shared-lib/contract/operations.ts";
import type { DeviceMemory } from "./device-memory.ts";
import type { SearchIndexer } from "./features/search/indexer.ts";
import type { RecordStore } from "./record-store.ts";
import type { Store } from "./store.ts";

export interface Signer {
  readonly id: string;
  readonly name: string;
}

/** What a handler works with. Handlers of `read` use only `store`; those of `write` change records through `records`. */
export interface Context {
  readonly store: Store;
  readonly records: RecordStore;
  readonly device: DeviceMemory;
  readonly search: SearchIndexer;
  /** This moment, ISO 8601 UTC. One value for the whole command. */
  readonly now: string;
  /** Who is writing; null for `read` and `unsigned`. */
  readonly person: Signer | null;
  readonly program: ProgramFacts;
}

export interface ProgramFacts {
  readonly dataFolder: string;
  readonly programVersion: string;
  readonly sqliteVersion: string;
  readonly demonstration: boolean;
  readonly lastSavedAt: string | null;
  readonly notSaved: string | null;
}

export type Handler<Name extends OperationName> = (
  context: Context,
  input: ParsedInputOf<Name>,
) => OutputOf<Name>;

/** Handlers of some operations, keyed by operation name. */
export type Handlers<Names extends OperationName> = { readonly [Name in Names]: Handler<Name> };

/** The person of a write; the dispatcher has made sure there is one. */
export function signerOf(context: Context): Signer {
  if (!context.person) throw new Error("a write reached its handler without a person");
  return context.person;
}

import type { z } from "zod";
import { bridgeOperations } from "./bridge.ts";
import { calculationOperations } from "./calculation.ts";
import { calloutOperations } from "./callout.ts";
import { causeOperations } from "./cause.ts";
import { checkOperations } from "./check.ts";
import { deviceOperations } from "./device.ts";
import { faultNoteOperations } from "./fault-note.ts";
import { historyOperations } from "./history.ts";
import { importOperations } from "./import.ts";
import { liftOperations } from "./lift.ts";
import { personOperations } from "./person.ts";
import { reviewOperations } from "./review.ts";
import { searchOperations } from "./search.ts";
import { siteOperations } from "./site.ts";
import { storeOperations } from "./store.ts";
import { visitOperations } from "./visit.ts";

/** Everything that can be asked of Sillbook, by name. The three doors and the tests read this one table. */
export const operations = {
  ...deviceOperations,
  ...personOperations,
  ...siteOperations,
  ...liftOperations,
  ...calloutOperations,
  ...visitOperations,
  ...faultNoteOperations,
  ...causeOperations,
  ...bridgeOperations,
  ...checkOperations,
  ...calculationOperations,
  ...searchOperations,
  ...reviewOperations,
  ...historyOperations,
  ...importOperations,
  ...storeOperations,
};

export type Operations = typeof operations;
export type OperationName = keyof Operations;
/** What a caller passes: defaults may be left out. */
export type InputOf<Name extends OperationName> = z.input<Operations[Name]["input"]>;
/** What a handler receives: defaults are filled in. */
export type ParsedInputOf<Name extends OperationName> = z.output<Operations[Name]["input"]>;
export type OutputOf<Name extends OperationName> = z.output<Operations[Name]["output"]>;

import type { OperationName } from "#shared-lib/contract/operations.ts";
import type { Handlers } from "./context.ts";
import { bridgeCommands } from "./features/bridge/commands.ts";
import { bridgeQueries } from "./features/bridge/queries.ts";
import { calculationCommands } from "./features/calculation/commands.ts";
import { calculationQueries } from "./features/calculation/queries.ts";
import { calloutCommands } from "./features/callout/commands.ts";
import { calloutQueries } from "./features/callout/queries.ts";
import { causeCommands } from "./features/cause/commands.ts";
import { causeQueries } from "./features/cause/queries.ts";
import { checkCommands } from "./features/check/commands.ts";
import { checkQueries } from "./features/check/queries.ts";
import { deviceCommands } from "./features/device/commands.ts";
import { deviceQueries } from "./features/device/queries.ts";
import { faultNoteCommands } from "./features/fault-note/commands.ts";
import { faultNoteQueries } from "./features/fault-note/queries.ts";
import { historyCommands } from "./features/history/commands.ts";
import { historyQueries } from "./features/history/queries.ts";
import { importCommands } from "./features/import/commands.ts";
import { importQueries } from "./features/import/queries.ts";
import { liftCommands } from "./features/lift/commands.ts";
import { liftQueries } from "./features/lift/queries.ts";
import { personHandlers } from "./features/person/handlers.ts";
import { reviewQueries } from "./features/review/queries.ts";
import { searchQueries } from "./features/search/queries.ts";
import { siteHandlers } from "./features/site/handlers.ts";
import { storeQueries } from "./features/store/queries.ts";
import { visitCommands } from "./features/visit/commands.ts";
import { visitQueries } from "./features/visit/queries.ts";
import type { MaintenanceName } from "./maintenance.ts";

/** Every operation but maintenance has its handler here; a missing one does not compile. */
export const handlers: Handlers<Exclude<OperationName, MaintenanceName>> = {
  ...deviceCommands,
  ...deviceQueries,
  ...personHandlers,
  ...siteHandlers,
  ...liftCommands,
  ...liftQueries,
  ...calloutCommands,
  ...calloutQueries,
  ...visitCommands,
  ...visitQueries,
  ...faultNoteCommands,
  ...faultNoteQueries,
  ...causeCommands,
  ...causeQueries,
  ...bridgeCommands,
  ...bridgeQueries,
  ...checkCommands,
  ...checkQueries,
  ...calculationCommands,
  ...calculationQueries,
  ...searchQueries,
  ...reviewQueries,
  ...historyCommands,
  ...historyQueries,
  ...importCommands,
  ...importQueries,
  ...storeQueries,
};

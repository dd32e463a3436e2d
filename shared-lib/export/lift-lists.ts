import type { LiftLine, Signal } from "../contract/lift.ts";
import type { InputOf } from "../contract/operations.ts";
import type { Site } from "../contract/site.ts";
import type { Visit } from "../contract/visit.ts";
import type { Ask } from "../import/bring-in-table.ts";
import { moment, number, pagedList, text, wholeList } from "./export-list.ts";

/** Every lift, of one site where it is named, or those that words find. */
export const liftList = wholeList<{ readonly siteId?: string; readonly text?: string }, LiftLine>(
  "Lifts",
  [
    text("Site", 26, (lift) => lift.siteName),
    text("Lift", 16, (lift) => lift.name),
    text("Street", 26, (lift) => lift.street),
    text("Plate number", 16, (lift) => lift.plateNumber),
    text("Drive", 18, (lift) => lift.driveKind),
    text("Doors", 16, (lift) => lift.doorKind),
    text("Controller family", 20, (lift) => lift.controllerFamily),
    number("Landings", (lift) => lift.landingCount),
    text("State", 16, (lift) => lift.state),
    text("Reason of the state", 36, (lift) => lift.stateReason),
    moment("State since", (lift) => lift.stateSince),
    number("Open bridges", (lift) => lift.openBridges),
    number("Open callouts", (lift) => lift.openCallouts),
  ],
  async (ask, { siteId, text: words = "" }) => {
    const { lifts } =
      words.trim() === "" ? await ask("lift.list", {}) : await ask("lift.lookUp", { text: words, limit: 50 });
    return siteId === undefined ? lifts : lifts.filter((lift) => lift.siteId === siteId);
  },
);

export const siteList = wholeList<Record<string, never>, Site & { readonly liftCount: number }>(
  "Sites",
  [
    text("Site", 26, (site) => site.name),
    text("Street", 26, (site) => site.street),
    text("Town", 18, (site) => site.town),
    number("Lifts", (site) => site.liftCount),
    text("Hours", 24, (site) => site.hours),
    text("Where the machinery is", 30, (site) => site.machineryLocation),
    text("Contact", 20, (site) => site.contactName),
    text("Telephone of the contact", 20, (site) => site.contactTelephone),
    text("Keys", 36, (site) => site.keys),
    text("Access notes", 44, (site) => site.accessNotes),
  ],
  async (ask) => (await ask("site.list", {})).sites,
);

export const signalList = wholeList<{ readonly id: string }, Signal & { readonly landing: string }>(
  "Signals",
  [
    text("Signal", 26, (signal) => signal.name),
    text("Role", 24, (signal) => signal.role),
    text("Marking", 18, (signal) => signal.marking),
    text("Active level", 12, (signal) => signal.activeLevel),
    text("Landing", 10, (signal) => signal.landing),
  ],
  async (ask, { id }) => {
    const { signals, landings } = await ask("lift.find", { id });
    const markings = new Map(landings.map((landing) => [landing.id, landing.marking]));
    return signals.map((signal) => ({ ...signal, landing: markings.get(signal.landingId ?? "") ?? "" }));
  },
);

type VisitInput = Omit<InputOf<"visit.list">, "offset" | "limit">;
const visitsAtOnce = 500;

async function* readVisits(ask: Ask, input: VisitInput) {
  for (let offset = 0; ; offset += visitsAtOnce) {
    const { visits } = await ask("visit.list", { ...input, offset, limit: visitsAtOnce });
    yield { rows: visits, of: null };
    if (visits.length < visitsAtOnce) return;
  }
}

export const visitList = pagedList<VisitInput, Visit>(
  "Visits",
  [
    text("Lift", 30, (visit) => visit.liftTitle),
    moment("Arrived", (visit) => visit.arrivedAt),
    moment("Left", (visit) => visit.leftAt),
    text("Kind", 14, (visit) => visit.kind),
    text("Engineer", 18, (visit) => visit.engineer.name),
    text("Found", 40, (visit) => visit.found),
    text("Done", 40, (visit) => visit.done),
    text("Cause", 36, (visit) => visit.fix?.cause ?? ""),
    text("Fix", 36, (visit) => visit.fix?.fix ?? ""),
    text("Display reading", 16, (visit) => visit.displayReading),
    text("Readings", 40, (visit) => visit.readings.join("\n")),
    text("Chargeable", 12, ({ chargeable }) => (chargeable === null ? "" : chargeable ? "yes" : "no")),
    text("Callout", 12, (visit) => visit.calloutNumber),
  ],
  readVisits,
);

/** The parts that were recorded on visits, one a row. */
export const partList = pagedList<
  VisitInput,
  { readonly visit: Visit; readonly part: Visit["parts"][number] }
>(
  "Parts",
  [
    text("Part", 30, ({ part }) => part.name),
    number("Quantity", ({ part }) => part.quantity),
    text("Marking", 20, ({ part }) => part.marking),
    text("Lift", 30, ({ visit }) => visit.liftTitle),
    moment("Visit", ({ visit }) => visit.arrivedAt),
    text("Engineer", 18, ({ visit }) => visit.engineer.name),
    text("Callout", 12, ({ visit }) => visit.calloutNumber),
  ],
  async function* (ask, input) {
    for await (const { rows } of readVisits(ask, input))
      yield { rows: rows.flatMap((visit) => visit.parts.map((part) => ({ visit, part }))), of: null };
  },
);

import type { Entity } from "#shared-lib/contract/history.ts";

/** How a field lies in its column: SQLite has neither booleans nor lists. */
export type ColumnKind = "text" | "number" | "boolean" | "json";

export interface EntityTable {
  readonly table: string;
  /** Fields beside id, version, createdAt and deleted, which every table has. */
  readonly columns: Readonly<Record<string, ColumnKind>>;
  /** Append-only rows are never changed or deleted: a correction is a new row that names the row it corrects. */
  readonly appendOnly?: boolean;
  /** May its making or its last change be taken back. A register is only ever continued. */
  readonly undo: boolean;
  /** The field that names the lift whose safety the row bears on; "id" for the lift itself. */
  readonly liftField?: string;
}

function fields<Kind extends ColumnKind>(kind: Kind, names: string): Record<string, Kind> {
  return Object.fromEntries(names.split(" ").map((name) => [name, kind])) as Record<string, Kind>;
}

export const entityTables: Readonly<Record<Entity, EntityTable>> = {
  company: { table: "company", undo: true, columns: fields("text", "name") },
  person: {
    table: "person",
    undo: true,
    columns: { ...fields("text", "name role telephone startScreen"), ...fields("boolean", "onDuty active") },
  },
  site: {
    table: "site",
    undo: true,
    columns: fields(
      "text",
      "name street town accessNotes keys hours machineryLocation contactName contactTelephone",
    ),
  },
  lift: {
    table: "lift",
    undo: true,
    liftField: "id",
    columns: {
      ...fields(
        "text",
        "siteId name plateNumber alarmLine driveKind roping doorKind controllerFamily standardBuiltTo installedOn modernisedOn unlockNeeds notes state stateReason stateSince stateBy stateComparedBy",
      ),
      ...fields(
        "number",
        "ratedLoad ratedSpeed sheaveDiameter encoderPulses doorWidth pitDepth headroom magnetLength sensorSpacing unlockingZone zoneTolerance upSlowdownDistance downSlowdownDistance upFinalDistance downFinalDistance busBitRate busLength",
      ),
    },
  },
  landing: {
    table: "landing",
    undo: true,
    columns: { ...fields("text", "liftId marking name entrances"), ...fields("number", "level") },
  },
  signal: {
    table: "signal",
    undo: true,
    columns: fields("text", "liftId name role marking activeLevel landingId"),
  },
  callout: {
    table: "callout",
    undo: true,
    liftField: "liftId",
    columns: {
      ...fields(
        "text",
        "number liftId liftWords landingId said faultGroup inside insideSince insideCondition caller callBack displayReading receivedAt ending endingReason awaits returnVisitOn endedAt engineerId",
      ),
      ...fields("number", "insideCount"),
      ...fields("boolean", "groupSettled earlierRecord"),
    },
  },
  "callout event": {
    table: "calloutEvent",
    appendOnly: true,
    undo: false,
    columns: {
      ...fields("text", "calloutId kind at personId toId note registerComparedBy corrects"),
      ...fields("boolean", "withdrawn earlierRecord"),
    },
  },
  caller: {
    table: "caller",
    appendOnly: true,
    undo: false,
    columns: fields("text", "calloutId at caller callBack said personId"),
  },
  visit: {
    table: "visit",
    undo: true,
    columns: {
      ...fields("text", "liftId calloutId kind engineerId arrivedAt leftAt found done displayReading"),
      ...fields("boolean", "chargeable"),
      ...fields("json", "parts readings"),
    },
  },
  "recorded fix": {
    table: "recordedFix",
    undo: true,
    columns: fields("text", "liftId calloutId visitId cause fix faultGroup at personId noteId causeKey"),
  },
  "fault note": {
    table: "faultNote",
    undo: true,
    columns: {
      ...fields(
        "text",
        "number title faultGroup source status statusBy statusAt statusReason starterKey starterHash",
      ),
      ...fields("json", "symptoms applies causes checks cautions calculators checkPlans"),
      ...fields("boolean", "edited"),
    },
  },
  bridge: {
    table: "bridge",
    undo: false,
    liftField: "liftId",
    columns: fields(
      "text",
      "number liftId calloutId contact points landingId reason control leadNumber setAt setBy removedAt removedBy removalNote checkedAt checkedBy proof",
    ),
  },
  danger: {
    table: "danger",
    undo: false,
    liftField: "liftId",
    columns: fields("text", "liftId foundAt foundBy words clearedAt clearedBy clearedHow"),
  },
  check: {
    table: "signalCheck",
    undo: false,
    columns: {
      ...fields("text", "liftId planId planName startedAt finishedAt personId visitId calloutId"),
      ...fields("json", "steps"),
    },
  },
  "check step": {
    table: "checkStep",
    appendOnly: true,
    undo: false,
    columns: {
      ...fields("text", "checkId stepKey verdict sentence note at personId"),
      ...fields("json", "found"),
    },
  },
  calculation: {
    table: "calculation",
    undo: true,
    columns: {
      ...fields("text", "calculatorId liftId landingId visitId at personId verdictWord verdictSentence"),
      ...fields("json", "inputs result"),
    },
  },
  "cause step": {
    table: "causeStep",
    appendOnly: true,
    undo: false,
    columns: {
      ...fields(
        "text",
        "liftId calloutId visitId noteId checkKey checkTitle outcomeKey outcomeWords at personId takesBack",
      ),
      ...fields("json", "after"),
    },
  },
};

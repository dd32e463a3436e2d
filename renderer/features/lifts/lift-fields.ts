import { doorKinds, driveKinds, ropings } from "#shared-lib/words.ts";
import type { RecordField } from "./record-fields.ts";

const wordsAsStored = (words: readonly string[]) => words.map((word) => ({ stored: word, words: word }));

const length = (
  section: string,
  key: string,
  label: string,
  unit: "mm" | "m",
  least: number,
  most: number,
  hint?: string,
): RecordField => ({
  key,
  label,
  section,
  kind: "number",
  unit,
  least,
  most,
  ...(hint === undefined ? {} : { hint }),
});

const record = "Plate and papers";
const drive = "Drive";
const doors = "Doors and unlocking";
const well = "Well and switches";
const zone = "Zone sensing";
const bus = "Panel bus";

/** Everything recorded about a lift, in the order of the sheet. Small lengths in mm, heights in m; SI is stored. */
export const liftFields: readonly RecordField[] = [
  { key: "name", label: "Name at the site", section: record, kind: "line", required: true },
  { key: "plateNumber", label: "Number on the plate", section: record, kind: "line" },
  { key: "alarmLine", label: "Alarm line", section: record, kind: "telephone" },
  { key: "controllerFamily", label: "Controller family", section: record, kind: "line" },
  { key: "standardBuiltTo", label: "Standard it was built to", section: record, kind: "line" },
  { key: "installedOn", label: "Installed on", section: record, kind: "day" },
  { key: "modernisedOn", label: "Modernised on", section: record, kind: "day" },
  {
    key: "driveKind",
    label: "Drive",
    section: drive,
    kind: "choice",
    options: wordsAsStored(driveKinds),
  },
  {
    key: "ratedLoad",
    label: "Rated load",
    section: drive,
    kind: "number",
    unit: "kg",
    least: 40,
    most: 20_000,
  },
  {
    key: "ratedSpeed",
    label: "Rated speed",
    section: drive,
    kind: "number",
    unit: "m/s",
    least: 0.05,
    most: 20,
  },
  { key: "roping", label: "Roping", section: drive, kind: "choice", options: wordsAsStored(ropings) },
  length(drive, "sheaveDiameter", "Sheave diameter", "mm", 0.05, 3),
  {
    key: "encoderPulses",
    label: "Encoder, pulses per turn",
    section: drive,
    kind: "number",
    least: 1,
    most: 1_000_000,
    whole: true,
  },
  { key: "doorKind", label: "Doors", section: doors, kind: "choice", options: wordsAsStored(doorKinds) },
  length(doors, "doorWidth", "Door width", "mm", 0.3, 5),
  {
    key: "unlockNeeds",
    label: "Unlocking needs",
    section: doors,
    kind: "choice",
    options: [
      { stored: "either", words: "either zone signal" },
      { stored: "both", words: "both zone signals" },
    ],
  },
  {
    key: "unlockingZone",
    label: "Unlocking zone",
    section: doors,
    kind: "choice",
    options: [
      { stored: 0.2, words: "±200 mm" },
      { stored: 0.35, words: "±350 mm" },
    ],
  },
  length(well, "pitDepth", "Pit depth", "m", 0.1, 20),
  length(well, "headroom", "Headroom", "m", 0.5, 20, "above the highest landing"),
  length(well, "upSlowdownDistance", "Up slowdown switch", "m", 0.01, 40, "before the highest landing"),
  length(well, "downSlowdownDistance", "Down slowdown switch", "m", 0.01, 40, "before the lowest landing"),
  length(well, "upFinalDistance", "Up final switch", "mm", 0, 2, "beyond the highest landing"),
  length(well, "downFinalDistance", "Down final switch", "mm", 0, 2, "beyond the lowest landing"),
  length(zone, "magnetLength", "Zone magnet length", "mm", 0.02, 2, "from the site’s drawing"),
  length(zone, "sensorSpacing", "Spacing of the zone sensors", "mm", 0, 2),
  {
    ...length(zone, "zoneTolerance", "Site’s own tolerance of a zone centre", "mm", 0.0005, 0.1),
    plusMinus: true,
    hint: "plus or minus",
  },
  {
    key: "busBitRate",
    label: "Bit rate",
    section: bus,
    kind: "number",
    unit: "kbit/s",
    least: 1000,
    most: 10_000_000,
  },
  length(bus, "busLength", "Length of the bus", "m", 0.1, 10_000),
  { key: "notes", label: "Notes", section: "Notes", kind: "text" },
];

/** What is asked when a lift is added: enough to find it and to send somebody. The rest can come later. */
export const newLiftFields: readonly RecordField[] = liftFields.filter((field) =>
  ["name", "plateNumber", "alarmLine", "controllerFamily", "driveKind", "doorKind"].includes(field.key),
);

const place = "Place";
const access = "Access";

export const siteFields: readonly RecordField[] = [
  { key: "name", label: "Name", section: place, kind: "line", required: true },
  { key: "street", label: "Street", section: place, kind: "line" },
  { key: "town", label: "Town", section: place, kind: "line" },
  { key: "hours", label: "Hours", section: access, kind: "line", hint: "when somebody lets you in" },
  { key: "machineryLocation", label: "Where the machinery is", section: access, kind: "line" },
  { key: "contactName", label: "Contact", section: access, kind: "line" },
  { key: "contactTelephone", label: "Telephone of the contact", section: access, kind: "telephone" },
  { key: "keys", label: "Keys", section: access, kind: "text" },
  { key: "accessNotes", label: "Access notes", section: access, kind: "text" },
];

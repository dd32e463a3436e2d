/** The trade words that are stored. One list each; screens, files and the command line use the same words. */

export const faultGroups = [
  "doors",
  "door operator",
  "safety chain",
  "position and zone sensing",
  "drive and motor",
  "brake",
  "controller and power supply",
  "landing and car panels",
  "panel bus and cabling",
  "suspension and traction",
  "governor and safety gear",
  "buffers, pit and shaft",
  "car, lighting, ventilation",
  "alarm and rescue",
  "hydraulics",
  "environment and misuse",
  "not yet known",
] as const;
export type FaultGroup = (typeof faultGroups)[number];

export const driveKinds = ["geared traction", "gearless traction", "machine-room-less", "hydraulic"] as const;
export type DriveKind = (typeof driveKinds)[number];

export const doorKinds = ["centre-opening", "side-opening", "hinged", "vertical sliding"] as const;
export type DoorKind = (typeof doorKinds)[number];

export const ropings = ["1:1", "2:1", "4:1"] as const;

export const liftStates = ["in service", "restricted", "out of service"] as const;
export type LiftState = (typeof liftStates)[number];

/** In the order in which they happen. `people released` only where people were inside. */
export const eventKinds = [
  "received",
  "passed on",
  "arrived",
  "people released",
  "made safe",
  "back in service",
  "closed",
] as const;
export type EventKind = (typeof eventKinds)[number];

export const endings = [
  "repaired",
  "nothing found",
  "left out of service",
  "cancelled",
  "wrong address",
] as const;
export type Ending = (typeof endings)[number];

/** `not recorded` comes only with records from before Sillbook. */
export const insideStates = ["nobody", "people inside", "not known", "not recorded"] as const;
export type InsideState = (typeof insideStates)[number];

export const awaited = ["part", "approval", "return visit", "other"] as const;

export const visitKinds = ["callout", "return visit", "maintenance", "commissioning"] as const;

export const noteStatuses = ["draft", "confirmed", "withdrawn"] as const;
export type NoteStatus = (typeof noteStatuses)[number];

export const roles = ["engineer", "office", "team lead"] as const;
export type Role = (typeof roles)[number];

export const startScreens = ["desk", "find", "lifts", "checks", "bench", "review"] as const;

export const signalRoles = [
  "upper zone sensor",
  "lower zone sensor",
  "up slowdown switch",
  "down slowdown switch",
  "up final switch",
  "down final switch",
  "car door contact",
  "landing door contact",
  "door open limit",
  "door close limit",
  "door open command",
  "door close command",
  "door reversal device",
  "inspection switch",
  "inspection up",
  "inspection down",
  "emergency electrical switch",
  "safety chain tap",
  "brake contact",
  "other",
] as const;

/** Which contact of the safety chain a bridge lies across. Car and landing door together is not a choice: it is a danger. */
export const chainContacts = [
  "landing door contact",
  "car door contact",
  "landing door lock",
  "final limit switch",
  "governor contact",
  "safety gear contact",
  "buffer contact",
  "pit stop switch",
  "car-top stop switch",
  "slack rope contact",
  "other contact of the chain",
] as const;

/** A bridge is set only while the lift is under one of these controls (F9.20: inspection or emergency electrical only). */
export const bridgeControls = ["inspection", "emergency electrical"] as const;

/** Days within which a callout with the same fault group on the same lift is a repeat. */
export const repeatWindowDays = 30;

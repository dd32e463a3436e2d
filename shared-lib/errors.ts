/**
 * Every failure a person or a script can meet has one code. The words for each code are in one place, so that
 * the screens, the command line and the log say the same thing.
 */
export const errorWords = {
  "input-invalid": "Something in what was entered does not fit. Nothing was changed.",
  "operation-unknown": "There is no operation of that name.",
  "person-missing":
    "It is not known who is writing. Choose your name at the foot of the column, or pass --as.",
  "not-found": "That record does not exist, or was deleted.",
  "version-conflict":
    "Somebody changed this record after you opened it. Both texts are kept; nothing was overwritten.",
  "bridge-open": "This lift cannot be recorded as back in service: a bridge is open on it.",
  "people-inside":
    "People inside are not recorded as released. The lift cannot go back in service or the callout be closed.",
  "doors-bridged-together":
    "Car door and landing door contacts are never bridged together. Nothing was entered. If both were found bridged, record that as a danger.",
  "danger-open":
    "A car door and a landing door were found bridged together. Every further step waits until that is cleared.",
  "register-not-compared":
    "A named person must confirm that the bridge register was compared with the shaft before the lift goes back in service.",
  "state-refused": "That does not fit the present state of this record.",
  "time-refused": "That time does not fit the times already recorded.",
  "disk-full": "Not saved: the disk is full. What you typed is kept here. Free some space and save again.",
  "disk-denied": "Not saved: the data folder does not allow writing. Check its permissions and save again.",
  "disk-failed": "Not saved: the disk reported an error. Check the disk, then save again.",
  "store-damaged": "The database is damaged. Nothing was opened or changed; a backup can be restored.",
  "store-foreign": "That file is not a Sillbook database. Nothing was changed.",
  "store-newer": "The database was written by a newer Sillbook. Update this program to open it.",
  "folder-in-use": "Another program holds this data folder.",
  "folder-not-empty": "That folder already holds other data.",
  "backup-failed": "The backup could not be made or checked.",
  "access-refused":
    "This window is not, or no longer, let in. Run npm start again: it opens the running program. What you typed is kept here.",
  "shell-unreachable": "The program did not answer. What you typed is kept here.",
  unexpected: "Something unexpected happened. It was written to the log file.",
} as const;

export type ErrorCode = keyof typeof errorWords;

/** Where in an input something is wrong: `path` as in ["events", 0, "at"]. */
export interface FieldProblem {
  readonly path: readonly (string | number)[];
  readonly message: string;
}

/** Plain JSON facts that help a person act: field problems, the other text of a conflict, a process that holds a folder. */
export interface ErrorDetails {
  readonly fields?: readonly FieldProblem[];
  readonly [fact: string]: unknown;
}

/** The one error type that crosses layers. Everything else that is thrown is a defect and becomes `unexpected`. */
export class SillbookError extends Error {
  readonly code: ErrorCode;
  readonly details: ErrorDetails;

  constructor(code: ErrorCode, message?: string, details: ErrorDetails = {}) {
    super(message ?? errorWords[code]);
    this.name = "SillbookError";
    this.code = code;
    this.details = details;
  }
}

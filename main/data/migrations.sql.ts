export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly sql: string;
}

const recordColumns = `id TEXT PRIMARY KEY NOT NULL,
  version INTEGER NOT NULL CHECK (version >= 1),
  createdAt TEXT NOT NULL,
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1))`;

const firstTables = `
CREATE TABLE deviceState (key TEXT PRIMARY KEY NOT NULL, value TEXT NOT NULL) STRICT;
CREATE TABLE draft (key TEXT PRIMARY KEY NOT NULL, value TEXT NOT NULL, keptAt TEXT NOT NULL) STRICT;

CREATE TABLE change (
  id INTEGER PRIMARY KEY,
  stamp TEXT NOT NULL,
  device TEXT NOT NULL,
  personId TEXT,
  entity TEXT NOT NULL,
  rowId TEXT NOT NULL,
  field TEXT NOT NULL,
  value TEXT NOT NULL,
  schemaVersion INTEGER NOT NULL
) STRICT;
CREATE INDEX changeOfRow ON change (rowId, id);

CREATE TABLE company (${recordColumns}, name TEXT NOT NULL) STRICT;
CREATE TABLE person (${recordColumns}, name TEXT NOT NULL, role TEXT NOT NULL, telephone TEXT NOT NULL,
  startScreen TEXT NOT NULL, onDuty INTEGER NOT NULL, active INTEGER NOT NULL) STRICT;
CREATE TABLE site (${recordColumns}, name TEXT NOT NULL, street TEXT NOT NULL, town TEXT NOT NULL,
  accessNotes TEXT NOT NULL, keys TEXT NOT NULL, hours TEXT NOT NULL, machineryLocation TEXT NOT NULL,
  contactName TEXT NOT NULL, contactTelephone TEXT NOT NULL) STRICT;

CREATE TABLE lift (${recordColumns}, siteId TEXT NOT NULL REFERENCES site (id), name TEXT NOT NULL,
  plateNumber TEXT NOT NULL, alarmLine TEXT NOT NULL, driveKind TEXT, ratedLoad REAL, ratedSpeed REAL, roping TEXT,
  sheaveDiameter REAL, encoderPulses REAL, doorKind TEXT, doorWidth REAL, controllerFamily TEXT NOT NULL,
  standardBuiltTo TEXT NOT NULL, installedOn TEXT, modernisedOn TEXT, pitDepth REAL, headroom REAL, magnetLength REAL,
  sensorSpacing REAL, unlockNeeds TEXT, unlockingZone REAL, zoneTolerance REAL, upSlowdownDistance REAL,
  downSlowdownDistance REAL, upFinalDistance REAL, downFinalDistance REAL, busBitRate REAL, busLength REAL,
  notes TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('in service', 'restricted', 'out of service')),
  stateReason TEXT NOT NULL, stateSince TEXT, stateBy TEXT, stateComparedBy TEXT) STRICT;
CREATE INDEX liftOfSite ON lift (siteId);

CREATE TABLE landing (${recordColumns}, liftId TEXT NOT NULL REFERENCES lift (id), marking TEXT NOT NULL,
  name TEXT NOT NULL, level REAL NOT NULL, entrances TEXT NOT NULL) STRICT;
CREATE INDEX landingOfLift ON landing (liftId, level);
CREATE TABLE signal (${recordColumns}, liftId TEXT NOT NULL REFERENCES lift (id), name TEXT NOT NULL, role TEXT NOT NULL,
  marking TEXT NOT NULL, activeLevel TEXT NOT NULL, landingId TEXT) STRICT;
CREATE INDEX signalOfLift ON signal (liftId);

CREATE TABLE callout (${recordColumns}, number TEXT NOT NULL UNIQUE, liftId TEXT REFERENCES lift (id),
  liftWords TEXT NOT NULL, landingId TEXT, said TEXT NOT NULL, faultGroup TEXT NOT NULL,
  inside TEXT NOT NULL, insideSince TEXT, insideCount INTEGER, insideCondition TEXT NOT NULL, caller TEXT NOT NULL, callBack TEXT NOT NULL,
  displayReading TEXT NOT NULL, receivedAt TEXT NOT NULL, groupSettled INTEGER NOT NULL, ending TEXT,
  endingReason TEXT NOT NULL, awaits TEXT, returnVisitOn TEXT, endedAt TEXT, engineerId TEXT,
  earlierRecord INTEGER NOT NULL, CHECK ((ending IS NULL) = (endedAt IS NULL))) STRICT;
CREATE INDEX calloutOfLift ON callout (liftId, receivedAt);
CREATE INDEX calloutByTime ON callout (receivedAt);
CREATE INDEX calloutOpen ON callout (receivedAt) WHERE endedAt IS NULL AND deleted = 0;
CREATE INDEX calloutByGroup ON callout (faultGroup, receivedAt);
CREATE INDEX calloutInside ON callout (liftId) WHERE inside IN ('people inside', 'not known') AND earlierRecord = 0;

CREATE TABLE calloutEvent (${recordColumns}, calloutId TEXT NOT NULL REFERENCES callout (id),
  kind TEXT NOT NULL, at TEXT NOT NULL, personId TEXT, toId TEXT, note TEXT NOT NULL, registerComparedBy TEXT,
  corrects TEXT REFERENCES calloutEvent (id), withdrawn INTEGER NOT NULL, earlierRecord INTEGER NOT NULL,
  CHECK (kind <> 'back in service' OR withdrawn = 1 OR earlierRecord = 1 OR registerComparedBy IS NOT NULL)) STRICT;
CREATE INDEX eventOfCallout ON calloutEvent (calloutId, at);
CREATE UNIQUE INDEX eventCorrectedOnce ON calloutEvent (corrects) WHERE corrects IS NOT NULL;

-- An event counts until a later row corrects it; a withdrawn one did not happen.
CREATE VIEW effectiveEvent AS
  SELECT * FROM calloutEvent AS e
  WHERE e.withdrawn = 0 AND NOT EXISTS (SELECT 1 FROM calloutEvent AS later WHERE later.corrects = e.id);

-- Who still waits to be let out: nobody was released since people inside were reported, the call itself or a later one.
CREATE VIEW calloutWithPeopleInside AS
  SELECT callout.id, callout.liftId FROM callout
  WHERE callout.inside = 'people inside' AND callout.earlierRecord = 0 AND NOT EXISTS (
    SELECT 1 FROM effectiveEvent AS event WHERE event.calloutId = callout.id AND event.kind = 'people released'
      AND substr(event.at, 1, 16) >= substr(coalesce(callout.insideSince, callout.receivedAt), 1, 16));

CREATE TABLE caller (${recordColumns}, calloutId TEXT NOT NULL REFERENCES callout (id), at TEXT NOT NULL,
  caller TEXT NOT NULL, callBack TEXT NOT NULL, said TEXT NOT NULL, personId TEXT) STRICT;
CREATE INDEX callerOfCallout ON caller (calloutId);

CREATE TABLE visit (${recordColumns}, liftId TEXT NOT NULL REFERENCES lift (id), calloutId TEXT REFERENCES callout (id),
  kind TEXT NOT NULL, engineerId TEXT NOT NULL, arrivedAt TEXT NOT NULL, leftAt TEXT, found TEXT NOT NULL,
  done TEXT NOT NULL, displayReading TEXT NOT NULL, chargeable INTEGER, parts TEXT NOT NULL, readings TEXT NOT NULL) STRICT;
CREATE INDEX visitOfLift ON visit (liftId, arrivedAt);
CREATE INDEX visitOfCallout ON visit (calloutId);

CREATE TABLE faultNote (${recordColumns}, number TEXT NOT NULL UNIQUE, title TEXT NOT NULL, faultGroup TEXT NOT NULL,
  symptoms TEXT NOT NULL, applies TEXT NOT NULL, causes TEXT NOT NULL, checks TEXT NOT NULL, cautions TEXT NOT NULL,
  calculators TEXT NOT NULL, checkPlans TEXT NOT NULL, source TEXT NOT NULL, status TEXT NOT NULL, statusBy TEXT,
  statusAt TEXT, statusReason TEXT NOT NULL, starterKey TEXT UNIQUE, starterHash TEXT, edited INTEGER NOT NULL) STRICT;

CREATE TABLE recordedFix (${recordColumns}, liftId TEXT NOT NULL REFERENCES lift (id), calloutId TEXT REFERENCES callout (id),
  visitId TEXT REFERENCES visit (id), cause TEXT NOT NULL, fix TEXT NOT NULL, faultGroup TEXT NOT NULL, at TEXT NOT NULL,
  personId TEXT, noteId TEXT REFERENCES faultNote (id), causeKey TEXT) STRICT;
CREATE INDEX fixOfCallout ON recordedFix (calloutId);
CREATE INDEX fixOfVisit ON recordedFix (visitId);
CREATE INDEX fixOfNote ON recordedFix (noteId) WHERE noteId IS NOT NULL;
CREATE INDEX fixOfLift ON recordedFix (liftId, at);

CREATE TABLE bridge (${recordColumns}, number TEXT NOT NULL UNIQUE, liftId TEXT NOT NULL REFERENCES lift (id),
  calloutId TEXT, contact TEXT NOT NULL, points TEXT NOT NULL, landingId TEXT, reason TEXT NOT NULL, control TEXT NOT NULL,
  leadNumber TEXT NOT NULL, setAt TEXT NOT NULL, setBy TEXT NOT NULL, removedAt TEXT, removedBy TEXT,
  removalNote TEXT NOT NULL, checkedAt TEXT, checkedBy TEXT, proof TEXT NOT NULL,
  CHECK (deleted = 0),
  CHECK (checkedAt IS NULL OR (removedAt IS NOT NULL AND checkedBy IS NOT NULL AND proof <> ''))) STRICT;
CREATE INDEX bridgeOfLift ON bridge (liftId, setAt);
CREATE INDEX bridgeOpen ON bridge (liftId) WHERE checkedAt IS NULL;

CREATE TABLE danger (${recordColumns}, liftId TEXT NOT NULL REFERENCES lift (id), foundAt TEXT NOT NULL, foundBy TEXT NOT NULL,
  words TEXT NOT NULL, clearedAt TEXT, clearedBy TEXT, clearedHow TEXT NOT NULL, CHECK (deleted = 0)) STRICT;
CREATE INDEX dangerOfLift ON danger (liftId);

CREATE TABLE signalCheck (${recordColumns}, liftId TEXT NOT NULL REFERENCES lift (id), planId TEXT NOT NULL,
  planName TEXT NOT NULL, startedAt TEXT NOT NULL, finishedAt TEXT, personId TEXT NOT NULL, visitId TEXT, calloutId TEXT,
  steps TEXT NOT NULL) STRICT;
CREATE INDEX checkOfLift ON signalCheck (liftId, startedAt);
CREATE TABLE checkStep (${recordColumns}, checkId TEXT NOT NULL REFERENCES signalCheck (id), stepKey TEXT NOT NULL,
  found TEXT NOT NULL, verdict TEXT NOT NULL, sentence TEXT NOT NULL, note TEXT NOT NULL, at TEXT NOT NULL,
  personId TEXT NOT NULL) STRICT;
CREATE INDEX stepOfCheck ON checkStep (checkId, stepKey, at);

CREATE TABLE calculation (${recordColumns}, calculatorId TEXT NOT NULL, liftId TEXT NOT NULL REFERENCES lift (id),
  landingId TEXT, visitId TEXT, at TEXT NOT NULL, personId TEXT NOT NULL, verdictWord TEXT NOT NULL,
  verdictSentence TEXT NOT NULL, inputs TEXT NOT NULL, result TEXT NOT NULL) STRICT;
CREATE INDEX calculationOfLift ON calculation (liftId, at);

-- What is searched: one row a document. The full-text table holds only the index (its content is this table).
-- Attributes of a document that fits several (a fault note for two drives) are parted by line ends.
CREATE TABLE searchDocument (
  docid INTEGER PRIMARY KEY,
  kind TEXT NOT NULL,
  ref TEXT NOT NULL,
  title TEXT NOT NULL,
  symptom TEXT NOT NULL,
  cause TEXT NOT NULL,
  fix TEXT NOT NULL,
  body TEXT NOT NULL,
  place TEXT NOT NULL,
  marking TEXT NOT NULL,
  site TEXT NOT NULL,
  lift TEXT NOT NULL,
  controllerFamily TEXT NOT NULL,
  drive TEXT NOT NULL,
  faultGroup TEXT NOT NULL,
  state TEXT NOT NULL,
  at TEXT,
  UNIQUE (kind, ref)
) STRICT;
CREATE VIRTUAL TABLE searchText USING fts4 (content="searchDocument", title, symptom, cause, fix, body, place, marking,
  tokenize=unicode61, prefix="3");
`;

/** Answers to the checks of a fault note, with their words as they were; an answer taken back stays, a later row says so. */
const causeSteps = `
CREATE TABLE causeStep (${recordColumns}, liftId TEXT NOT NULL REFERENCES lift (id),
  calloutId TEXT REFERENCES callout (id), visitId TEXT REFERENCES visit (id), noteId TEXT NOT NULL REFERENCES faultNote (id),
  checkKey TEXT NOT NULL, checkTitle TEXT NOT NULL, outcomeKey TEXT NOT NULL, outcomeWords TEXT NOT NULL, at TEXT NOT NULL,
  personId TEXT NOT NULL, takesBack TEXT REFERENCES causeStep (id), after TEXT NOT NULL,
  CHECK (calloutId IS NOT NULL OR visitId IS NOT NULL)) STRICT;
CREATE INDEX causeStepOfCallout ON causeStep (calloutId, id) WHERE calloutId IS NOT NULL;
CREATE INDEX causeStepOfVisit ON causeStep (visitId, id) WHERE visitId IS NOT NULL;
CREATE UNIQUE INDEX causeStepTakenBackOnce ON causeStep (takesBack) WHERE takesBack IS NOT NULL;
`;

/**
 * What was brought in from old tables: each import, the records it made (to take it back as a whole) and the rows it refused
 * (to be corrected and brought again). Of this device only; the records themselves have their history as all others.
 */
const imports = `
CREATE TABLE importRun (id TEXT PRIMARY KEY NOT NULL, name TEXT NOT NULL, header TEXT NOT NULL, mapping TEXT NOT NULL,
  at TEXT NOT NULL, personId TEXT NOT NULL REFERENCES person (id)) STRICT;
CREATE TABLE importedRecord (place INTEGER PRIMARY KEY, importId TEXT NOT NULL REFERENCES importRun (id),
  entity TEXT NOT NULL, recordId TEXT NOT NULL,
  state TEXT NOT NULL DEFAULT 'brought in' CHECK (state IN ('brought in', 'taken back', 'kept'))) STRICT;
CREATE INDEX importedRecordOfRun ON importedRecord (importId, state, place);
CREATE TABLE importRefusal (importId TEXT NOT NULL REFERENCES importRun (id), rowNumber INTEGER NOT NULL,
  reason TEXT NOT NULL, cells TEXT NOT NULL, PRIMARY KEY (importId, rowNumber)) STRICT;
`;

/** Append-only: a migration that has landed is never edited, its checksum is stored in every database. */
export const migrations: readonly Migration[] = [
  { number: 1, name: "first tables", sql: firstTables },
  { number: 2, name: "cause steps", sql: causeSteps },
  { number: 3, name: "imports", sql: imports },
];

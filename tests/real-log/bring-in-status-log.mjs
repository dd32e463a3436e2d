// Brings a log of lift status changes (CSV: unit_id, station, station_desc, unit_desc, time_utc, end_time_utc,
// update_type, category, symptom) into a Sillbook data folder through `ask --lines`. Each break becomes a callout; it is
// back in service at the first later row of that unit with category ON, else it stays open.
//
//   node tests/real-log/bring-in-status-log.mjs <log.csv> <data folder>
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

const here = path.dirname(fileURLToPath(import.meta.url));
const projectRoot = path.resolve(here, "../..");
const groupOfSymptom = JSON.parse(readFileSync(path.join(here, "symptom-groups.json"), "utf8"));
const importer = "Log import";

/** RFC 4180: quoted fields may hold commas, quotes and line ends. */
/** @param {string} text @returns {Record<string, string>[]} */
export function readCsv(text) {
  const rows = [];
  let row = [];
  let field = "";
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at];
    if (quoted) {
      if (sign !== '"') field += sign;
      else if (text[at + 1] === '"') {
        field += '"';
        at++;
      } else quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === "," || sign === "\n") {
      row.push(field);
      field = "";
      if (sign === "\n") {
        rows.push(row);
        row = [];
      }
    } else if (sign !== "\r") field += sign;
  }
  if (field !== "" || row.length > 0) rows.push([...row, field]);
  const [head = [], ...body] = rows;
  return body.map((cells) => Object.fromEntries(head.map((name, index) => [name, cells[index] ?? ""])));
}

/** @param {string | undefined} time */
const moment = (time) => new Date(time ?? "").toISOString();

/** @param {Record<string, string>[]} rows @param {string} liftId */
function calloutsOf(rows, liftId) {
  const inOrder = [...rows].sort((one, other) => (moment(one.time_utc) < moment(other.time_utc) ? -1 : 1));
  return inOrder.flatMap((row, index) => {
    if (row.update_type !== "Break") return [];
    const back = inOrder.slice(index + 1).find((later) => later.category === "ON");
    const group = groupOfSymptom[row.symptom ?? ""];
    if (group === undefined) throw new Error(`The table of symptoms has no line for "${row.symptom}".`);
    return [
      {
        liftId,
        said: `${row.symptom}, ${row.unit_desc}`,
        group,
        receivedAt: moment(row.time_utc),
        backInServiceAt: back ? moment(back.time_utc) : null,
      },
    ];
  });
}

/** One `ask --lines` process: requests go in, answers come out in the same order. */
/** @param {string} folder */
function openAsk(folder) {
  const ask = path.join(projectRoot, "main/command-line/ask.mjs");
  const child = spawn(process.execPath, [ask, "--data", folder, "--as", importer, "--lines"], {
    stdio: ["pipe", "pipe", "inherit"],
  });
  const answers = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  return {
    /** @param {string} operation @param {unknown} input */
    send: (operation, input) => child.stdin.write(`${JSON.stringify({ operation, input })}\n`),
    async next() {
      const { value, done } = await answers.next();
      if (done) throw new Error("ask ended early");
      const envelope = JSON.parse(value);
      if (!envelope.ok) throw new Error(`${envelope.error.code}: ${envelope.error.message}`);
      return envelope.value;
    },
    async close() {
      child.stdin.end();
      await new Promise((resolve) => child.once("exit", resolve));
    },
  };
}

/** @param {string} file @param {string} folder */
async function bringIn(file, folder) {
  const rows = readCsv(readFileSync(file, "utf8"));
  const ask = openAsk(folder);
  /** @param {string} operation @param {unknown} input */
  const call = (operation, input) => {
    ask.send(operation, input);
    return ask.next();
  };
  await call("company.start", { companyName: "Status log", personName: importer, role: "office" });
  const sites = new Map();
  const units = groupByUnit(rows);
  let callouts = 0;
  for (const [unit, unitRows] of units) {
    const { station_desc: entrance, unit_desc: place } = unitRows[0] ?? {};
    const station = unitRows[0]?.station || `${unit} (no station in the log)`;
    if (!sites.has(station)) sites.set(station, (await call("site.add", { name: station })).id);
    const lift = await call("lift.add", {
      siteId: sites.get(station),
      name: unit,
      notes: `${entrance}. ${place}`,
    });
    const brought = calloutsOf(unitRows, lift.id);
    for (const callout of brought) ask.send("callout.bringIn", callout);
    for (const _ of brought) await ask.next();
    callouts += brought.length;
  }
  await ask.close();
  return { lifts: units.size, sites: sites.size, callouts };
}

/** @param {Record<string, string>[]} rows @returns {Map<string, Record<string, string>[]>} */
function groupByUnit(rows) {
  const units = new Map();
  for (const row of rows) units.set(row.unit_id, [...(units.get(row.unit_id) ?? []), row]);
  return units;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [file, folder] = process.argv.slice(2);
  if (!file || !folder) {
    console.error("Usage: node tests/real-log/bring-in-status-log.mjs <log.csv> <data folder>");
    process.exit(2);
  }
  console.log(JSON.stringify(await bringIn(path.resolve(file), path.resolve(folder))));
}

import type { Page } from "playwright";
import { calculators } from "#shared-lib/calculators/registry.ts";
import { askFromPage } from "./drive-page.ts";

/** What a screen is, its address, words that stand there when it has its answers, and a key that opens a part of it. */
export type Address = readonly [
  what: string,
  address: string,
  shows: string,
  key?: { readonly press: string; readonly shows: string; readonly closes?: string },
];

/** Every screen with records of the demonstration company behind it. */
export async function everyAddress(page: Page): Promise<readonly Address[]> {
  const open = await askFromPage(page, "callout.list", { filter: { open: true } });
  const repaired = await askFromPage(page, "callout.list", { filter: { ending: "repaired" } });
  const { lifts } = await askFromPage(page, "lift.list", {});
  const notes = await askFromPage(page, "search.find", { text: "zone signals reversed", kinds: ["note"] });
  const callout = first("open callout", open.callouts);
  const closed = first("repaired callout", repaired.callouts);
  const lift = first(
    "lift with an open bridge",
    lifts.filter(({ openBridges }) => openBridges > 0),
  );
  const note = first("fault note", notes.groups[0]?.hits ?? []);
  const { visits } = await askFromPage(page, "visit.list", { liftId: closed.liftId ?? "" });
  const visit = first("visit", visits);
  const { people } = await askFromPage(page, "person.list", {});
  const as = first("person", people).id;
  const doneId = await finishedCheck(page, lift.id, as);
  const carriedOut = await askFromPage(page, "check.start", { liftId: lift.id, planId: "zone-sensors" }, as);
  return [
    ["Desk", "/desk", "Open callouts"],
    ["list of callouts", "/desk?list=all", "All callouts"],
    ["open callout", `/callout/${callout.id}`, callout.number],
    ["closed callout", `/callout/${closed.id}`, closed.number],
    ["visit form", `/callout/${callout.id}?visit=new`, "Save the visit"],
    ["Find", "/find", "All fault notes"],
    ["Find with results", "/find?q=doors%20keep%20reopening", "Recorded fixes"],
    ["Find with nothing", "/find?q=qqxzv%20wwkjh", "Nothing found"],
    ["fault note", `/note/${note.id}`, note.title],
    ["fault note being edited", `/note/${note.id}?`, note.title, { press: "e", shows: "Title" }],
    ["new fault note", "/note/new", "Save as a draft note"],
    ["Lifts", "/lifts", `${lifts.length} lifts at`],
    ["site", `/site/${lift.siteId}`, lift.name],
    ["lift", `/lift/${lift.id}`, lift.siteName],
    ["lift in print", `/print/lift/${lift.id}`, lift.siteName],
    ["visit", `/visit/${visit.id}`, visit.engineer.name],
    ["Checks", "/checks", "Zone sensors at every landing"],
    ["Checks with a lift", `/checks?lift=${lift.id}&plan=zone-sensors`, "steps"],
    ["check carried out", `/checks/${carriedOut.id}`, "Step 1 of"],
    ["finished check", `/checks/${doneId}`, "A finished check is a record"],
    ["check in print", `/print/check/${doneId}`, "Zone sensors at every landing"],
    ["Bench", "/bench", "Saved last"],
    ...calculators.map(
      ({ id, name }) => [`${name} with a lift`, `/bench/${id}?lift=${lift.id}`, name] as const,
    ),
    // Without a lift only the head of the page differs, and that is the same for all of them.
    ...calculators.slice(0, 1).map(({ id, name }) => [name, `/bench/${id}`, name] as const),
    ["list of keys", "/bench", "Saved last", { press: "F1", shows: "Everywhere", closes: "Escape" }],
    ["old records", "/bring-in", "Brought in so far"],
    ["Review", "/review", "fault notes ended callouts"],
    ["Settings", "/settings", "Back up now"],
    ["callout slip", `/print/callout/${callout.id}`, callout.number],
    ["visit sheet", `/print/visit/${visit.id}`, visit.engineer.name],
  ];
}

/** With steps that passed, one that failed and the rest unchecked. @returns its id */
async function finishedCheck(page: Page, liftId: string, as: string): Promise<string> {
  const { id: checkId } = await askFromPage(page, "check.start", { liftId, planId: "zone-sensors" }, as);
  const { steps } = await askFromPage(page, "check.find", { id: checkId });
  for (const { key, expected } of steps.slice(0, 5)) {
    if (expected.kind === "order") {
      const found = { kind: "order" as const, order: [...expected.order] };
      await askFromPage(page, "check.recordStep", { checkId, stepKey: key, found }, as);
    } else if (expected.kind === "value") {
      const found = { kind: "value", value: -14 } as const;
      await askFromPage(page, "check.recordStep", { checkId, stepKey: key, found }, as);
    }
  }
  const { check } = await askFromPage(page, "check.find", { id: checkId });
  await askFromPage(page, "check.finish", { id: checkId, version: check.version }, as);
  return checkId;
}

function first<One>(what: string, found: readonly One[]): One {
  const [one] = found;
  if (one === undefined) throw new Error(`The demonstration company has no ${what}.`);
  return one;
}

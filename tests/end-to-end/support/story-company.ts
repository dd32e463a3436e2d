import type { Page } from "playwright";
import { askFromPage } from "./drive-page.ts";

/** Who and what the story is about: one lift whose other landings were measured, with an earlier bridge still open. */
export interface StoryCompany {
  readonly clerk: string;
  readonly engineer: string;
  readonly lead: string;
  readonly liftId: string;
  readonly liftTitle: string;
  /** Of landing 2. */
  readonly landingId: string;
  readonly bridgeId: string;
  readonly bridgeNumber: string;
}

const people = { clerk: "Ada Finch", engineer: "Bram Oakes", lead: "Suri Fenn" } as const;
/** Zone centres measured at the landings that are in order, in metres. */
const centres = { "0": 0.001, "1": -0.002, "3": 0.002, "4": -0.001 } as const;
const day = 24 * 60 * 60 * 1000;

/** Begins an empty program's company through operations; the first person is the clerk. */
export async function beginStory(page: Page): Promise<StoryCompany> {
  const { clerk, engineer, lead } = people;
  await askFromPage(page, "company.start", { companyName: "Gull Lifts", personName: clerk, role: "office" });
  const onDuty = { telephone: "555 0111", onDuty: true };
  await askFromPage(page, "person.add", { name: engineer, role: "engineer", ...onDuty }, clerk);
  await askFromPage(page, "person.add", { name: lead, role: "team lead" }, clerk);
  const site = await askFromPage(page, "site.add", { name: "Kittiwake House", street: "1 Quay Road" }, clerk);
  const lift = {
    siteId: site.id,
    name: "Lift 2",
    driveKind: "geared traction",
    controllerFamily: "Dunlin",
    ratedSpeed: 1,
    magnetLength: 0.3,
    sensorSpacing: 0.06,
    unlockNeeds: "both",
    unlockingZone: 0.2,
    zoneTolerance: 0.005,
    landings: ["0", "1", "2", "3", "4"].map((marking, index) => ({ marking, level: index * 2.93 })),
  } as const;
  const { id: liftId } = await askFromPage(page, "lift.add", lift, clerk);
  const { line, landings } = await askFromPage(page, "lift.find", { id: liftId });
  const landing = (marking: string): string => landings.find((one) => one.marking === marking)?.id ?? "";
  for (const [marking, centre] of Object.entries(centres)) {
    const inputs = { magnetLength: 0.3, sensorSpacing: 0.06, centreUp: centre, centreDown: centre };
    const result = { calculatorId: "zone-sensors", liftId, landingId: landing(marking), inputs };
    await askFromPage(page, "calculation.save", result, engineer);
  }
  const bridge = await askFromPage(page, "bridge.set", earlierBridge(liftId, landing("3")), engineer);
  return {
    ...people,
    liftId,
    liftTitle: line.title,
    landingId: landing("2"),
    bridgeId: bridge.id,
    bridgeNumber: bridge.number,
  };
}

/** Set on an earlier day to look for an open contact, and never recorded as removed. */
function earlierBridge(liftId: string, landingId: string) {
  return {
    liftId,
    landingId,
    contact: "landing door contact",
    points: "34-35",
    reason: "looking for an open door contact",
    control: "inspection",
    setAt: new Date(Date.now() - 3 * day).toISOString(),
  } as const;
}

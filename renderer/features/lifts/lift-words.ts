import type { Lift, LiftLine } from "#shared-lib/contract/lift.ts";
import { formatNumber, formatQuantity, formatSince } from "#shared-lib/format.ts";
import { type MarkKind, markWords } from "../../ui/mark.tsx";

/** "8 landings · machine-room-less, 2:1 · 630 kg, 1.00 m/s · Dunlin controller · EN 81-20:2020" */
export function liftFactsLine(lift: Lift, line: Pick<LiftLine, "landingCount">): string {
  const landings = line.landingCount === 1 ? "1 landing" : `${line.landingCount} landings`;
  const drive = [lift.driveKind, lift.roping].filter((part) => part !== null).join(", ");
  const rated = [
    lift.ratedLoad === null ? null : formatQuantity(lift.ratedLoad, "kg"),
    lift.ratedSpeed === null ? null : formatQuantity(lift.ratedSpeed, "m/s", 2),
  ]
    .filter((part) => part !== null)
    .join(", ");
  const controller = lift.controllerFamily === "" ? "" : `${lift.controllerFamily} controller`;
  return [landings, drive, rated, controller, lift.standardBuiltTo].filter((part) => part !== "").join(" · ");
}

/** Since when, why and by whom, after the word of the state. */
export function stateWords(lift: Pick<Lift, "stateSince" | "stateReason" | "stateBy">, now: Date): string {
  const since = lift.stateSince === null ? "" : `since ${formatSince(lift.stateSince, now)}`;
  const by = lift.stateBy === null || lift.stateBy === "" ? "" : `. ${lift.stateBy}`;
  const why = lift.stateReason === "" ? "" : `: ${lift.stateReason}`;
  return `${since}${why}${by}`;
}

/** Marks of the timeline come as words of the look; "level" and "on site" have other names among the drawn ones. */
export function markOfEntry(mark: string): MarkKind {
  if (mark === "level") return "flush";
  if (mark === "on site") return "arrived";
  return mark in markWords ? (mark as MarkKind) : "flush";
}

export function millimetres(metres: number): string {
  return formatNumber(metres * 1000);
}

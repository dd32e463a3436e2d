import { expect, test } from "vitest";
import { otherDoorOpen } from "../../../renderer/features/bridges/bridge-parts.ts";

const landing = { contact: "landing door lock", open: true } as const;
const car = { contact: "car door contact", open: true } as const;
const governor = { contact: "governor contact", open: true } as const;

test("a door contact finds the open bridge across the other kind of door", () => {
  expect(otherDoorOpen("car door contact", [governor, landing])).toBe(landing);
  expect(otherDoorOpen("landing door contact", [governor, car])).toBe(car);
});

test("the same kind of door, another contact, or a bridge that is out is none", () => {
  expect(otherDoorOpen("landing door contact", [landing])).toBeUndefined();
  expect(otherDoorOpen("governor contact", [car, landing])).toBeUndefined();
  expect(otherDoorOpen("car door contact", [{ ...landing, open: false }])).toBeUndefined();
  expect(otherDoorOpen(null, [car, landing])).toBeUndefined();
});

import { expect, test } from "vitest";
import {
  readSetBridge,
  type SetBridgeDraft,
  startSetBridge,
} from "../../../renderer/features/bridges/set-bridge-draft.ts";

const now = new Date(2026, 10, 24, 12, 0);
const whole: SetBridgeDraft = {
  ...startSetBridge,
  contact: "landing door contact",
  landingId: "L6",
  points: "34–35",
  leadNumber: "7",
  reason: "contact does not make",
  control: "inspection",
};

test("a bridge is entered with all its fields; the program gives the time", () => {
  expect(readSetBridge(whole, now).input).toEqual({
    contact: "landing door contact",
    landingId: "L6",
    points: "34–35",
    leadNumber: "7",
    reason: "contact does not make",
    control: "inspection",
  });
});

test.each([
  ["contact", { contact: null }],
  ["landingId", { landingId: null }],
  ["points", { points: " " }],
  ["leadNumber", { leadNumber: "" }],
  ["reason", { reason: "" }],
  ["control", { control: null }],
  ["setAt", { at: "noonish" }],
] as const)("without a good %s nothing is entered, and the field says why", (field, part) => {
  const { input, problems } = readSetBridge({ ...whole, ...part }, now);
  expect(input).toBeNull();
  expect(Object.entries(problems).filter(([, problem]) => problem !== undefined)).toEqual([
    [field, expect.any(String)],
  ]);
});

test("contacts without a landing need none", () => {
  expect(readSetBridge({ ...whole, contact: "governor contact", landingId: null }, now).input).not.toBeNull();
});

import { expect, test } from "vitest";
import { insideCallBack } from "../../../renderer/features/callout/inside-call-back.ts";

const reported = "2026-11-24T09:30:00.000Z";
const later = { id: "2", at: "2026-11-24T09:30:00.020Z", caller: "Mr Roe", callBack: "", said: "stuck" };

test("people reported with the call: the number of that call", () => {
  const callout = { callBack: "555 0142", insideSince: null };
  expect(insideCallBack({ callout, callers: [{ ...later, callBack: "555 0199" }] })).toBe(
    "Call back on 555 0142.",
  );
  expect(insideCallBack({ callout: { ...callout, callBack: "" }, callers: [] })).toBe(
    "No call-back number is written down.",
  );
});

test("people reported by a later caller: that caller's number, and never the first one's without saying so", () => {
  const callout = { callBack: "555 0142", insideSince: reported };
  expect(insideCallBack({ callout, callers: [{ ...later, callBack: "555 0199" }] })).toBe(
    "Call back on 555 0199.",
  );
  expect(insideCallBack({ callout, callers: [later] })).toBe(
    "No number from this caller. First caller: 555 0142.",
  );
  expect(insideCallBack({ callout, callers: [] })).toBe("First caller: 555 0142.");
});

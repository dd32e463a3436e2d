import { expect, test } from "vitest";
import type { OperationRequest } from "#shared-lib/contract/operation.ts";
import { answerCall } from "../../../main/desktop/answer-call.ts";

function services() {
  const seen = { requests: [] as OperationRequest[], opened: [] as string[], printed: 0 };
  return {
    seen,
    data: {
      request: async (request: OperationRequest) => {
        seen.requests.push(request);
        return { ok: true as const, value: "done" };
      },
    },
    openExternal: async (address: string) => {
      seen.opened.push(address);
    },
    print: async () => {
      seen.printed += 1;
    },
  };
}

test("a request is passed on with its three members", async () => {
  const all = services();
  const request = { operation: "a", input: { x: 1 }, as: "Ada", extra: 1 };
  expect(await answerCall({ call: "request", request }, all)).toEqual({ ok: true, value: "done" });
  expect(all.seen.requests).toEqual([{ operation: "a", input: { x: 1 }, as: "Ada" }]);
});

test("an allowed address is opened outside, once", async () => {
  const all = services();
  expect((await answerCall({ call: "open-external", address: "https://example.org/" }, all)).ok).toBe(true);
  expect(all.seen.opened).toEqual(["https://example.org/"]);
});

test.each(["file:///etc/passwd", "http://example.org", "javascript:1", 7, null, ["https://example.org"]])(
  "the address %j is not opened",
  async (address) => {
    const all = services();
    expect(await answerCall({ call: "open-external", address }, all)).toMatchObject({
      ok: false,
      error: { code: "input-invalid" },
    });
    expect(all.seen.opened).toEqual([]);
  },
);

test("printing prints", async () => {
  const all = services();
  expect((await answerCall({ call: "print" }, all)).ok).toBe(true);
  expect(all.seen.printed).toBe(1);
});

test.each([
  null,
  undefined,
  1,
  "print",
  [],
  {},
  { call: "quit" },
  { call: "request" },
  { call: "request", request: [] },
])("the message %j does nothing", async (message) => {
  const all = services();
  expect(await answerCall(message, all)).toMatchObject({ ok: false, error: { code: "input-invalid" } });
  expect(all.seen).toEqual({ requests: [], opened: [], printed: 0 });
});

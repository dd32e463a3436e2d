import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import { type AskDoor, openAskDoor } from "../../../main/command-line/ask-door.ts";
import { bodyLimitBytes } from "../../../main/command-line/json-body.ts";
import { findRunningProgram } from "../../../main/command-line/running-program.ts";
import { writeRunning } from "../../../main/data/data-folder.ts";

let door: AskDoor;
let received: OperationRequest[];
let shown: number;

beforeEach(async () => {
  received = [];
  shown = 0;
  door = await openAskDoor({
    request: async (request): Promise<Envelope> => {
      received.push(request);
      return { ok: true, value: "done" };
    },
    show: async () => {
      shown += 1;
      return { in: "browser", address: "http://127.0.0.1:1/open?token=x" };
    },
  });
});
afterEach(() => door.close());

function send(
  path: string,
  options: { method?: string; authorization?: string; body?: string; type?: string } = {},
) {
  const {
    method = "POST",
    authorization = `Bearer ${door.key}`,
    body = "{}",
    type = "application/json",
  } = options;
  return fetch(door.address + path, {
    method,
    headers: { Authorization: authorization, "Content-Type": type, Connection: "close" },
    ...(method === "GET" ? {} : { body }),
  });
}

describe("the listener of the running program", () => {
  test("passes a request on to those who know the key", async () => {
    const request = { operation: "site.list", input: { text: "é" }, as: "Ada" };
    const answer = await send("/request", { body: JSON.stringify(request) });
    expect(await answer.json()).toEqual({ ok: true, value: "done" });
    expect(received).toEqual([request]);
  });

  test("is on the loopback address, with a key of 256 bits", () => {
    expect(door.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    expect(door.key).toMatch(/^[0-9a-f]{64}$/);
  });

  test.each(["", "Bearer ", "Bearer wrong", "Basic x"])(
    "refuses the authorization %j",
    async (authorization) => {
      for (const path of ["/request", "/show", "/"]) {
        const answer = await send(path, { authorization });
        expect(answer.status).toBe(401);
        expect(await answer.json()).toMatchObject({ ok: false, error: { code: "access-refused" } });
      }
      expect([received, shown]).toEqual([[], 0]);
    },
  );

  test("refuses a key that is right but for its end or its length", async () => {
    for (const authorization of [`Bearer ${door.key.slice(0, -1)}`, `Bearer ${door.key}0`]) {
      expect((await send("/request", { authorization })).status).toBe(401);
    }
  });

  test("takes POST only, and two addresses only", async () => {
    expect((await send("/request", { method: "GET" })).status).toBe(405);
    expect((await send("/show", { method: "PUT" })).status).toBe(405);
    expect((await send("/other")).status).toBe(404);
    expect([received, shown]).toEqual([[], 0]);
  });

  test.each([
    ["no JSON", "{", "application/json", 400],
    ["another form", "[]", "application/json", 400],
    ["another type", "{}", "text/plain", 415],
    ["too much", `"${"x".repeat(bodyLimitBytes)}"`, "application/json", 413],
  ])("answers %s with an error envelope", async (_name, body, type, status) => {
    const answer = await send("/request", { body, type });
    expect(answer.status).toBe(status);
    expect(await answer.json()).toMatchObject({ ok: false, error: { code: "input-invalid" } });
    expect(received).toEqual([]);
  });
});

describe("another process that looks for the running program", () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "sillbook-running-"));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  test("finds it by the file it wrote, asks it and has it shown", async () => {
    writeRunning(folder, { address: door.address, key: door.key, pid: process.pid });
    const running = await findRunningProgram(folder);
    expect(await running?.request({ operation: "a", input: {} })).toEqual({ ok: true, value: "done" });
    expect(received).toEqual([{ operation: "a", input: {} }]);
    expect(await running?.show()).toEqual({ in: "browser", address: "http://127.0.0.1:1/open?token=x" });
    expect(shown).toBe(1);
  });

  test("finds nothing without a file, with another key, or where nobody listens any more", async () => {
    expect(await findRunningProgram(folder)).toBeUndefined();
    writeRunning(folder, { address: door.address, key: "0".repeat(64), pid: process.pid });
    expect(await findRunningProgram(folder)).toBeUndefined();
    const gone = await openAskDoor({
      request: async () => ({ ok: true, value: 0 }),
      show: async () => ({ in: "window" }),
    });
    await gone.close();
    writeRunning(folder, { address: gone.address, key: gone.key, pid: process.pid });
    expect(await findRunningProgram(folder)).toBeUndefined();
  });
});

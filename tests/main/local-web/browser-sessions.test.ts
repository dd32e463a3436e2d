import { expect, test } from "vitest";
import { BrowserSessions } from "../../../main/local-web/browser-sessions.ts";

const pair = (setCookie: string): string => setCookie.split(";")[0] ?? "";

test("a cookie of another program on this machine is not ours", () => {
  const [ours, theirs] = [new BrowserSessions(47_115), new BrowserSessions(47_116)];
  const cookie = pair(theirs.begin());
  expect(theirs.knows(cookie)).toBe(true);
  expect(ours.knows(cookie)).toBe(false);
  expect(ours.knows(cookie.replace("47116", "47115"))).toBe(false);
});

test("the number of browsers is bounded: the oldest makes room", () => {
  const sessions = new BrowserSessions(1);
  const cookies = Array.from({ length: 65 }, () => pair(sessions.begin()));
  expect(cookies.map((cookie) => sessions.knows(cookie))).toEqual([false, ...Array(64).fill(true)]);
});

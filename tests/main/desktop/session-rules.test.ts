import type { Session } from "electron";
import { expect, test } from "vitest";
import { applySessionRules } from "../../../main/desktop/session-rules.ts";

interface Rules {
  askPermission(permission: string): boolean;
  checkPermission(permission: string): boolean;
  usesDevice(): boolean;
  cancels(url: string): boolean;
}

/** A session that keeps the handlers it is given and plays the questions Chromium would ask. */
function rules(): Rules {
  const handlers: Record<string, (...args: unknown[]) => unknown> = {};
  const keep = (name: string) => (handler: unknown) => {
    handlers[name] = handler as (...args: unknown[]) => unknown;
  };
  applySessionRules({
    setPermissionRequestHandler: keep("request"),
    setPermissionCheckHandler: keep("check"),
    setDevicePermissionHandler: keep("device"),
    webRequest: { onBeforeRequest: keep("before") },
  } as unknown as Session);
  const answered = <Answer>(ask: (answer: (value: Answer) => void) => void): Answer => {
    const answers: Answer[] = [];
    ask((value) => answers.push(value));
    expect(answers).toHaveLength(1);
    return answers[0] as Answer;
  };
  return {
    askPermission: (permission) => answered((answer) => handlers.request?.(null, permission, answer)),
    checkPermission: (permission) => handlers.check?.(null, permission) as boolean,
    usesDevice: () => handlers.device?.({}) as boolean,
    cancels: (url) => answered<{ cancel: boolean }>((answer) => handlers.before?.({ url }, answer)).cancel,
  };
}

test.each([
  "media",
  "geolocation",
  "notifications",
  "clipboard-read",
  "openExternal",
  "fullscreen",
  "hid",
  "unknown",
])("the permission %s is denied, asked for or looked up", (permission) => {
  expect(rules().askPermission(permission)).toBe(false);
  expect(rules().checkPermission(permission)).toBe(false);
});

test("no device is handed out", () => {
  expect(rules().usesDevice()).toBe(false);
});

test.each([
  "https://example.org/",
  "http://127.0.0.1:80/",
  "ws://example.org/",
  "file:///etc/passwd",
  "app://other/",
])("a request to %s is cancelled", (url) => {
  expect(rules().cancels(url)).toBe(true);
});

test.each(["app://bundle/", "app://bundle/assets/a.js", "blob:app://bundle/1", "data:image/png;base64,"])(
  "a request to %s goes through",
  (url) => {
    expect(rules().cancels(url)).toBe(false);
  },
);

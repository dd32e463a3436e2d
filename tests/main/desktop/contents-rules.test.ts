import { EventEmitter } from "node:events";
import type { WebContents } from "electron";
import { expect, test } from "vitest";
import { applyContentsRules } from "../../../main/desktop/contents-rules.ts";

class Contents extends EventEmitter {
  windowOpenHandler: ((details: { url: string }) => { action: string }) | undefined;

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.windowOpenHandler = handler;
  }

  /** @returns whether the event was prevented */
  tell(event: string, url: string): boolean {
    let prevented = false;
    this.emit(event, {
      url,
      preventDefault: () => {
        prevented = true;
      },
    });
    return prevented;
  }
}

function contents(): Contents {
  const made = new Contents();
  applyContentsRules(made as unknown as WebContents);
  return made;
}

test.each(["will-navigate", "will-redirect", "will-frame-navigate"])("%s stays on our own pages", (event) => {
  for (const url of [
    "https://example.org/",
    "app://bundle.example.org/",
    "file:///x",
    "about:blank",
    "data:text/html,x",
  ]) {
    expect(contents().tell(event, url), url).toBe(true);
  }
  expect(contents().tell(event, "app://bundle/")).toBe(false);
});

test("no page is embedded", () => {
  expect(contents().tell("will-attach-webview", "app://bundle/")).toBe(true);
});

test("no window is opened, not even of our own pages", () => {
  for (const url of ["https://example.org/", "app://bundle/", ""]) {
    expect(contents().windowOpenHandler?.({ url })).toEqual({ action: "deny" });
  }
});

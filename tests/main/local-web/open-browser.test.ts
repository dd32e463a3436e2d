import { expect, test } from "vitest";
import { browserCommand } from "../../../main/local-web/open-browser.ts";

const address = "http://127.0.0.1:47115/open?token=ab&x=1";

test.each([
  ["darwin", {}, ["open", address]],
  ["win32", {}, ["rundll32", "url.dll,FileProtocolHandler", address]],
  ["linux", { DISPLAY: ":0" }, ["xdg-open", address]],
  ["linux", { WAYLAND_DISPLAY: "wayland-0" }, ["xdg-open", address]],
  ["linux", { BROWSER: "/usr/bin/my-browser" }, ["/usr/bin/my-browser", address]],
  ["linux", {}, undefined],
] as const)("on %s with %j", (platform, env, command) => {
  expect(browserCommand(address, { platform, env })).toEqual(command);
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isAppAddress, isExternalAddress } from "../../../main/desktop/app-address.ts";

describe("our own pages", () => {
  test.each(["app://bundle/", "app://bundle", "app://bundle/assets/a.js?x#y"])("%s is one", (address) => {
    expect(isAppAddress(address)).toBe(true);
  });

  test.each([
    "app://bundle.evil.example/",
    "app://bundle@evil.example/",
    "app://user@bundle/",
    "app://bundle:80/",
    "app://other/",
    "app:bundle/",
    "https://bundle/",
    "https://evil.example/app://bundle/",
    "file:///app://bundle/",
    "about:blank",
    "javascript:alert(1)",
    "",
  ])("%s is not", (address) => {
    expect(isAppAddress(address)).toBe(false);
  });
});

describe("what may be opened outside", () => {
  test.each(["https://example.org/a?b", "HTTPS://EXAMPLE.ORG", "mailto:office@example.org"])(
    "%s may",
    (address) => {
      expect(isExternalAddress(address)).toBe(true);
    },
  );

  test.each([
    "http://example.org/",
    "file:///etc/passwd",
    "javascript:alert(1)",
    "smb://server/share",
    "ms-settings:",
    "vscode://file/x",
    "app://bundle/",
    "data:text/html,x",
    "//example.org",
    "C:\\Windows\\System32\\cmd.exe",
    "",
  ])("%s may not", (address) => {
    expect(isExternalAddress(address)).toBe(false);
  });

  test("nothing but https and mailto ever may", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.webUrl(),
          fc.string(),
          fc.string().map((rest) => `file:${rest}`),
        ),
        (address) => {
          if (isExternalAddress(address)) expect(address.trim().toLowerCase()).toMatch(/^(https|mailto):/);
        },
      ),
    );
  });
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { registerAppScheme, serveApp } from "../../../main/desktop/app-protocol.ts";

let folder: string;
let answer: (address: string, method?: string) => Promise<Response>;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "sillbook-app-"));
  mkdirSync(join(folder, "screens"));
  writeFileSync(join(folder, "screens", "index.html"), '<meta content="__CSP_NONCE__">');
  writeFileSync(join(folder, "secret.txt"), "not for a page");
  serveApp(
    {
      handle: (scheme, handler) => {
        expect(scheme).toBe("app");
        answer = async (address, method = "GET") => handler(new Request(address, { method }));
      },
    },
    join(folder, "screens"),
  );
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("the front page is served under the content security policy with a nonce of its own", async () => {
  const [first, second] = [await answer("app://bundle/"), await answer("app://bundle/")];
  const nonce = /'nonce-([^']+)'/.exec(first.headers.get("Content-Security-Policy") ?? "")?.[1];
  expect(await first.text()).toBe(`<meta content="${nonce}">`);
  expect(await second.text()).not.toContain(nonce);
});

test.each(["app://bundle/../secret.txt", "app://bundle/..%2fsecret.txt", "app://bundle/%2e%2e%5csecret.txt"])(
  "%s leads nowhere",
  async (address) => {
    const response = await answer(address);
    expect(response.status).toBe(404);
    expect(await response.text()).not.toContain("not for a page");
  },
);

test("another host and another method are refused", async () => {
  expect((await answer("app://other/")).status).toBe(403);
  expect((await answer("app://bundle/", "POST")).status).toBe(403);
});

test("the scheme is a secure standard one that may not bypass the policy", () => {
  let registered: unknown;
  registerAppScheme({
    registerSchemesAsPrivileged: (schemes) => {
      registered = schemes;
    },
  });
  expect(registered).toEqual([
    { scheme: "app", privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request as httpRequest, type IncomingHttpHeaders } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Envelope, OperationRequest, ProgramEvent } from "#shared-lib/contract/operation.ts";
import { bodyLimitBytes } from "../../../main/command-line/json-body.ts";
import { type LocalWebServer, startLocalWebServer } from "../../../main/local-web/local-web-server.ts";
import { tokenLifeMilliseconds } from "../../../main/local-web/opening-tokens.ts";

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

let folder: string;
let server: LocalWebServer;
let received: OperationRequest[];
let listeners: Set<(event: ProgramEvent) => void>;
let now: number;
let answerRequest: (request: OperationRequest) => Promise<Envelope>;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "sillbook-web-"));
  mkdirSync(join(folder, "screens", "assets"), { recursive: true });
  writeFileSync(
    join(folder, "screens", "index.html"),
    '<meta nonce="__CSP_NONCE__" content="__CSP_NONCE__">',
  );
  writeFileSync(join(folder, "screens", "assets", "main.js"), "run();");
  writeFileSync(join(folder, "secret.txt"), "not for a browser");
  received = [];
  listeners = new Set();
  now = 0;
  answerRequest = async () => ({ ok: true, value: "done" });
  server = await startLocalWebServer({
    data: {
      request: (request) => {
        received.push(request);
        return answerRequest(request);
      },
      onEvent: (listener) => {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
    },
    bundleFolder: join(folder, "screens"),
    port: 0,
    now: () => now,
  });
});
afterEach(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Options {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

/** node:http and not fetch: Host, Origin and a path with dots must be sent as they are given. */
function send(path: string, { method = "GET", headers = {}, body }: Options = {}): Promise<Answer> {
  const { hostname, port } = new URL(server.origin);
  return new Promise((done, fail) => {
    const outgoing = httpRequest({ hostname, port, path, method, headers, agent: false }, (incoming) => {
      let text = "";
      incoming.on("data", (chunk) => {
        text += chunk;
      });
      incoming.on("end", () =>
        done({ status: incoming.statusCode ?? 0, headers: incoming.headers, body: text }),
      );
    });
    outgoing.on("error", fail);
    outgoing.end(body);
  });
}

async function letIn(): Promise<string> {
  const { headers } = await send(server.openingAddress().slice(server.origin.length));
  return headers["set-cookie"]?.[0]?.split(";")[0] ?? "";
}

const json = { "Content-Type": "application/json" };

function post(cookie: string, options: Options = {}): Promise<Answer> {
  return send("/request", {
    method: "POST",
    body: JSON.stringify({ operation: "site.list", input: {} }),
    ...options,
    headers: { Cookie: cookie, Origin: server.origin, ...json, ...options.headers },
  });
}

describe("the opening address", () => {
  test("lets a browser in with a cookie that no script and no other site can use", async () => {
    const address = server.openingAddress();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/open\?token=[0-9a-f]{64}$/);
    const answer = await send(address.slice(server.origin.length));
    expect(answer.status).toBe(303);
    expect(answer.headers.location).toBe("/");
    const port = new URL(server.origin).port;
    expect(answer.headers["set-cookie"]).toEqual([
      expect.stringMatching(new RegExp(`^sillbook_${port}=[0-9a-f]{64}; Path=/; HttpOnly; SameSite=Strict$`)),
    ]);
    expect(answer.headers["cache-control"]).toBe("no-store");
  });

  test("works once", async () => {
    const path = server.openingAddress().slice(server.origin.length);
    expect((await send(path)).status).toBe(303);
    const again = await send(path, { headers: { Accept: "text/html" } });
    expect(again.status).toBe(401);
    expect(again.headers["set-cookie"]).toBeUndefined();
    expect(again.body).toContain("npm start");
  });

  test("ends after its life, and only then", async () => {
    const [first, second] = [server.openingAddress(), server.openingAddress()];
    now = tokenLifeMilliseconds - 1;
    expect((await send(first.slice(server.origin.length))).status).toBe(303);
    now = tokenLifeMilliseconds;
    expect((await send(second.slice(server.origin.length))).status).toBe(401);
  });

  test.each(["/open", "/open?token=", "/open?token=0000", "/open?token"])(
    "%s lets nobody in",
    async (path) => {
      expect((await send(path)).status).toBe(401);
    },
  );

  test("is not spent by anything but a plain visit", async () => {
    const path = server.openingAddress().slice(server.origin.length);
    const headers = { Origin: server.origin };
    expect((await send(path, { method: "POST", headers })).status).toBe(401);
    expect((await send(path)).status).toBe(303);
  });
});

describe("who is let in", () => {
  test.each(["/", "/index.html", "/assets/main.js", "/events", "/request", "/nothing"])(
    "%s needs the cookie",
    async (path) => {
      await letIn();
      const name = `sillbook_${new URL(server.origin).port}`;
      for (const cookie of ["", "other=1", `${name}=`, `${name}=${"0".repeat(64)}`]) {
        const answer = await send(path, { headers: { Cookie: cookie } });
        expect(answer.status).toBe(401);
        expect(JSON.parse(answer.body)).toMatchObject({ ok: false, error: { code: "access-refused" } });
      }
    },
  );

  test("a browser stays in, and a second one gets a cookie of its own", async () => {
    const [first, second] = [await letIn(), await letIn()];
    expect(first).not.toBe(second);
    for (const cookie of [first, second, `a=b; ${first}; c=d`]) {
      expect((await send("/", { headers: { Cookie: cookie } })).status).toBe(200);
    }
  });

  test.each(["evil.example", "localhost", "127.0.0.1", "127.0.0.1:1", "evil.example:PORT", "localhost:PORT"])(
    "the host name %s is refused although cookie and address are right (DNS rebinding)",
    async (host) => {
      const cookie = await letIn();
      const headers = { Cookie: cookie, Host: host.replace("PORT", new URL(server.origin).port) };
      expect((await send("/", { headers })).status).toBe(403);
      expect((await post(cookie, { headers })).status).toBe(403);
      expect((await send(server.openingAddress().slice(server.origin.length), { headers })).status).toBe(403);
      expect(received).toEqual([]);
    },
  );

  test.each(["https://evil.example", "http://127.0.0.1:1", "http://localhost", "null", "http://127.0.0.1"])(
    "the origin %s is refused although cookie and host are right",
    async (origin) => {
      const cookie = await letIn();
      expect((await post(cookie, { headers: { Origin: origin } })).status).toBe(403);
      expect((await send("/events", { headers: { Cookie: cookie, Origin: origin } })).status).toBe(403);
      expect(received).toEqual([]);
    },
  );

  test("a request that changes something must name its origin", async () => {
    const cookie = await letIn();
    const answer = await send("/request", {
      method: "POST",
      headers: { Cookie: cookie, ...json },
      body: "{}",
    });
    expect(answer.status).toBe(403);
  });

  test.each(["cross-site", "same-site"])(
    "a script or image of another page (%s) gets nothing",
    async (site) => {
      const cookie = await letIn();
      const headers = { Cookie: cookie, "Sec-Fetch-Site": site, "Sec-Fetch-Mode": "no-cors" };
      expect((await send("/assets/main.js", { headers })).status).toBe(403);
      expect((await send("/events", { headers })).status).toBe(403);
    },
  );

  test("no answer ever allows another origin", async () => {
    const cookie = await letIn();
    const answers = [
      await send("/", { headers: { Cookie: cookie } }),
      await send("/", { headers: { Cookie: cookie, Origin: "https://evil.example" } }),
      await send("/request", {
        method: "OPTIONS",
        headers: { Cookie: cookie, Origin: "https://evil.example" },
      }),
      await post(cookie),
    ];
    for (const { headers } of answers) {
      expect(Object.keys(headers).filter((name) => name.startsWith("access-control"))).toEqual([]);
    }
  });
});

describe("the files of the screens", () => {
  test("a page is served under the content security policy, with a nonce of its own each time", async () => {
    const cookie = await letIn();
    const nonces = new Set<string>();
    for (let round = 0; round < 3; round += 1) {
      const { headers, body } = await send("/", { headers: { Cookie: cookie } });
      const nonce = /'nonce-([^']+)'/.exec(String(headers["content-security-policy"]))?.[1] ?? "";
      expect(body).toBe(`<meta nonce="${nonce}" content="${nonce}">`);
      expect(headers["cache-control"]).toBe("no-store");
      nonces.add(nonce);
    }
    expect(nonces.size).toBe(3);
  });

  test("scripts are served as scripts", async () => {
    const { status, headers, body } = await send("/assets/main.js", { headers: { Cookie: await letIn() } });
    expect([status, headers["content-type"], body]).toEqual([
      200,
      "text/javascript; charset=utf-8",
      "run();",
    ]);
    expect(headers["x-content-type-options"]).toBe("nosniff");
  });

  test.each([
    "/../secret.txt",
    "/assets/../../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/assets/..%2f..%2fsecret.txt",
    "/..\\secret.txt",
    "/%5c..%5csecret.txt",
    "//secret.txt",
    "/%00",
    "/%",
    "/assets",
    "/assets/",
  ])("%s leads nowhere", async (path) => {
    const { status, body } = await send(path, { headers: { Cookie: await letIn() } });
    expect(status).toBe(404);
    expect(body).not.toContain("not for a browser");
  });

  test("nothing can be written to a file's address", async () => {
    const headers = { Cookie: await letIn(), Origin: server.origin };
    expect((await send("/", { method: "POST", headers })).status).toBe(405);
    expect((await send("/", { method: "DELETE", headers })).status).toBe(405);
  });
});

describe("requests", () => {
  test("are passed on whole, and the envelope comes back whole", async () => {
    const request = { operation: "callout.log", input: { words: 'ü "quoted" \u2028' }, as: "Ada" };
    const { status, body } = await post(await letIn(), { body: JSON.stringify(request) });
    expect([status, JSON.parse(body)]).toEqual([200, { ok: true, value: "done" }]);
    expect(received).toEqual([request]);
  });

  test("carry nothing but the three members of a request", async () => {
    await post(await letIn(), { body: JSON.stringify({ operation: "a", input: 1, extra: 2 }) });
    expect(received).toEqual([{ operation: "a", input: 1, as: undefined }]);
  });

  test("a defect behind the door is an envelope too, and the server goes on", async () => {
    const cookie = await letIn();
    answerRequest = () => Promise.reject(new Error("a defect"));
    const { status, body } = await post(cookie);
    expect(status).toBe(500);
    expect(JSON.parse(body)).toMatchObject({ ok: false, error: { code: "unexpected" } });
    expect((await send("/", { headers: { Cookie: cookie } })).status).toBe(200);
  });

  test("the largest body that is taken is taken", async () => {
    const frame = JSON.stringify({ operation: "a", input: "" });
    const body = JSON.stringify({ operation: "a", input: "x".repeat(bodyLimitBytes - frame.length) });
    expect(body.length).toBe(bodyLimitBytes);
    expect((await post(await letIn(), { body })).status).toBe(200);
    const answer = await post(await letIn(), { body: `${body} ` });
    expect(answer.status).toBe(413);
    expect(JSON.parse(answer.body).error.message).toMatch(/larger than 5 MB/);
    expect(received).toHaveLength(1);
  });

  test.each([
    ["{", json, 400],
    ["{}", json, 400],
    ['{"operation":1}', json, 400],
    ['{"operation":"a"}', { "Content-Type": "text/plain" }, 415],
    ['{"operation":"a"}', { "Content-Type": "application/x-www-form-urlencoded" }, 415],
  ])("%s of type %j is refused", async (body, headers, status) => {
    const answer = await post(await letIn(), { body, headers });
    expect(answer.status).toBe(status);
    expect(JSON.parse(answer.body)).toMatchObject({ ok: false, error: { code: "input-invalid" } });
    expect(received).toEqual([]);
  });

  test("only POST asks", async () => {
    expect((await send("/request", { headers: { Cookie: await letIn() } })).status).toBe(405);
  });
});

describe("the event stream", () => {
  interface Stream {
    readonly text: () => string;
    readonly ended: Promise<void>;
    /** Resolves when the text matches. */
    readonly until: (pattern: RegExp) => Promise<void>;
  }

  function listen(cookie: string): Promise<Stream> {
    const { hostname, port } = new URL(server.origin);
    return new Promise((done, fail) => {
      const outgoing = httpRequest(
        { hostname, port, path: "/events", headers: { Cookie: cookie } },
        (incoming) => {
          let text = "";
          let look = (): void => {};
          incoming.on("data", (chunk) => {
            text += chunk;
            look();
          });
          const ended = new Promise<void>((resolve) => incoming.on("end", resolve));
          const until = (pattern: RegExp): Promise<void> =>
            new Promise((resolve) => {
              look = () => {
                if (pattern.test(text)) resolve();
              };
              look();
            });
          done({ text: () => text, ended, until });
        },
      );
      outgoing.on("error", fail);
      outgoing.end();
    });
  }

  test("brings every event to every browser, each on one line", async () => {
    const cookie = await letIn();
    const streams = [await listen(cookie), await listen(cookie)];
    await Promise.all(streams.map((stream) => stream.until(/retry: 1000\n\n/)));
    const events: ProgramEvent[] = [
      { kind: "changed", records: [{ entity: "site", id: "1" }], at: "2026-03-02T08:00:00Z" },
      { kind: "progress", work: "import", done: 1, of: 2, words: "line one\nline two" },
    ];
    for (const event of events) for (const listener of listeners) listener(event);
    for (const stream of streams) {
      await stream.until(/progress.*\n\n/);
      const lines = stream.text().match(/^data: .*$/gm) ?? [];
      expect(lines.map((line) => JSON.parse(line.slice("data: ".length)))).toEqual(events);
    }
  });

  test("ends when the program ends, which waits for requests under way", async () => {
    const cookie = await letIn();
    const stream = await listen(cookie);
    let finish = (): void => {};
    const asked = new Promise<void>((resolve) => {
      answerRequest = () => {
        resolve();
        return new Promise((done) => {
          finish = () => done({ ok: true, value: "saved" });
        });
      };
    });
    const answer = post(cookie);
    await asked;
    const closed = server.close();
    await stream.ended;
    finish();
    expect(JSON.parse((await answer).body)).toEqual({ ok: true, value: "saved" });
    await closed;
    expect(listeners.size).toBe(0);
    await expect(send("/")).rejects.toThrow(/ECONNREFUSED/);
  });
});

import { createServer, get } from "node:http";
import { afterEach, beforeEach, expect, test } from "vitest";
import { listen } from "../../../main/command-line/ask-door.ts";
import { EventStream } from "../../../main/local-web/event-stream.ts";

const events = new EventStream(5);
const server = createServer((_request, response) => events.attach(response));

beforeEach(() => listen(server, 0));
afterEach(() => {
  events.close();
  return new Promise((done) => server.close(done));
});

test("a silent stream is kept alive by comments, which are no events", async () => {
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  const text = await new Promise<string>((done) => {
    get({ host: "127.0.0.1", port: address.port }, (incoming) => {
      let received = "";
      incoming.on("data", (chunk) => {
        received += chunk;
        if (/(: still here\n\n){2}/.test(received)) done(received);
      });
    });
  });
  expect(text).not.toMatch(/^data:/m);
});

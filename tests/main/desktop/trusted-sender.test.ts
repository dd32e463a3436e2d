import type { IpcMain, IpcMainInvokeEvent } from "electron";
import { expect, test } from "vitest";
import { handleTrusted } from "../../../main/desktop/trusted-sender.ts";

async function send(senderFrame: unknown): Promise<{ handled: unknown[]; answer: unknown }> {
  const handled: unknown[] = [];
  let receive: ((event: IpcMainInvokeEvent, message: unknown) => Promise<unknown>) | undefined;
  const ipcMain: Pick<IpcMain, "handle"> = {
    handle: (channel, listener) => {
      expect(channel).toBe("channel");
      receive = listener;
    },
  };
  handleTrusted(ipcMain, "channel", async (message) => {
    handled.push(message);
    return "answer";
  });
  const event = { senderFrame, sender: {} } as unknown as IpcMainInvokeEvent;
  return { handled, answer: await receive?.(event, "message").catch((error: unknown) => error) };
}

test("the top frame of our own page is answered", async () => {
  expect(await send({ origin: "app://bundle", parent: null })).toEqual({
    handled: ["message"],
    answer: "answer",
  });
});

test.each([
  ["a frame that is gone", null],
  ["a frame inside our page", { origin: "app://bundle", parent: {} }],
  ["another page", { origin: "https://evil.example", parent: null }],
  ["a page whose origin begins like ours", { origin: "app://bundle.evil.example", parent: null }],
  ["a page without an origin", { origin: "null", parent: null }],
])("%s is refused, and the handler never sees it", async (_name, frame) => {
  const { handled, answer } = await send(frame);
  expect(handled).toEqual([]);
  expect(answer).toMatchObject({ message: expect.stringMatching(/unknown sender/) });
});

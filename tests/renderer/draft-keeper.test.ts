import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { OperationRequest } from "#shared-lib/contract/operation.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import { DraftKeeper } from "../../renderer/draft-keeper.ts";

/** A shell whose answers the test gives one by one. */
class StandInShell {
  readonly asked: {
    readonly message: OperationRequest;
    readonly answer: (value: unknown) => void;
    readonly fail: () => void;
  }[] = [];

  readonly request = (message: OperationRequest): Promise<unknown> =>
    new Promise((resolve, reject) => {
      this.asked.push({
        message,
        answer: (value) => resolve({ ok: true, value }),
        fail: () => reject(new Error("gone")),
      });
    });

  get operations(): string[] {
    return this.asked.map(({ message }) => {
      const { value } = message.input as { value?: unknown };
      return value === undefined ? message.operation : `${message.operation} ${String(value)}`;
    });
  }
}

let shell: StandInShell;
let page: EventTarget & { visibilityState: string };
let kept: (string | null)[];
let failures: (SillbookError | undefined)[];

const turn = () => vi.advanceTimersByTimeAsync(0);
const keptAt = "2026-11-17T10:41:00Z";

beforeEach(() => {
  vi.useFakeTimers();
  shell = new StandInShell();
  page = Object.assign(new EventTarget(), { visibilityState: "visible" });
  vi.stubGlobal("window", Object.assign(new EventTarget(), { sillbook: { request: shell.request } }));
  vi.stubGlobal("document", page);
  kept = [];
  failures = [];
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const makeKeeper = () =>
  new DraftKeeper("new callout", { kept: (at) => kept.push(at), failed: (error) => failures.push(error) });

test("a draft is sent once the typing rests, and only its newest text", async () => {
  const keeper = makeKeeper();
  keeper.keep("d");
  await vi.advanceTimersByTimeAsync(200);
  keeper.keep("do");
  await vi.advanceTimersByTimeAsync(399);
  expect(shell.operations).toEqual([]);
  await vi.advanceTimersByTimeAsync(1);
  expect(shell.operations).toEqual(["draft.keep do"]);
  shell.asked[0]?.answer({ keptAt });
  await turn();
  expect(kept).toEqual([keptAt]);
});

test("a draft is sent at once when a field is left and when the page goes", async () => {
  const keeper = makeKeeper();
  keeper.keep("left");
  window.dispatchEvent(new Event("focusout"));
  await turn();
  keeper.keep("gone");
  window.dispatchEvent(new Event("pagehide"));
  // Without waiting for the first answer: there may be no later turn.
  expect(shell.operations).toEqual(["draft.keep left", "draft.keep gone"]);
});

test("a draft that is dropped stays dropped, though an older text is still on its way or fails", async () => {
  const keeper = makeKeeper();
  keeper.keep("old");
  await vi.advanceTimersByTimeAsync(400);
  keeper.keep("newer");
  const dropped = keeper.drop();
  await turn();
  expect(shell.operations).toEqual(["draft.keep old"]);
  shell.asked[0]?.fail();
  await turn();
  expect(shell.operations).toEqual(["draft.keep old", "draft.drop"]);
  shell.asked[1]?.answer({});
  await dropped;
  await vi.advanceTimersByTimeAsync(60_000);
  expect(shell.operations).toEqual(["draft.keep old", "draft.drop"]);
  expect(kept).toEqual([]);
});

test("a draft that could not be kept is said and tried again, with the newest text", async () => {
  const keeper = makeKeeper();
  keeper.keep("first");
  await vi.advanceTimersByTimeAsync(400);
  keeper.keep("second");
  shell.asked[0]?.fail();
  await turn();
  expect(failures.at(-1)?.code).toBe("shell-unreachable");
  await vi.advanceTimersByTimeAsync(2000);
  expect(shell.operations).toEqual(["draft.keep first", "draft.keep second"]);
  shell.asked[1]?.answer({ keptAt });
  await turn();
  expect(failures.at(-1)).toBeUndefined();
  expect(kept).toEqual([keptAt]);
});

test("a draft of a closed screen is still sent", async () => {
  const keeper = makeKeeper();
  keeper.keep("last words");
  keeper.close();
  await turn();
  expect(shell.operations).toEqual(["draft.keep last words"]);
});

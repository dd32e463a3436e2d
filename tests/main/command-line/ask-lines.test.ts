import { Readable } from "node:stream";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { answerLines } from "../../../main/command-line/ask-lines.ts";

async function run(
  text: string | Iterable<string>,
  request: (request: OperationRequest) => Promise<Envelope>,
  as?: string,
): Promise<{ answers: Envelope[]; allGood: boolean }> {
  const answers: Envelope[] = [];
  const allGood = await answerLines({
    input: Readable.from(typeof text === "string" ? [text] : text),
    write: async (line) => {
      expect(line.endsWith("\n")).toBe(true);
      answers.push(JSON.parse(line) as Envelope);
    },
    request,
    as,
  });
  return { answers, allGood };
}

const echo = async (request: OperationRequest): Promise<Envelope> => ({ ok: true, value: request });

describe("one answer for each line", () => {
  test("in order, one request at a time", async () => {
    let underWay = 0;
    const slow = async (request: OperationRequest): Promise<Envelope> => {
      underWay += 1;
      expect(underWay).toBe(1);
      await new Promise((resume) => setImmediate(resume));
      underWay -= 1;
      return { ok: true, value: request.operation };
    };
    const { answers, allGood } = await run('{"operation":"a"}\n{"operation":"b"}\r\n{"operation":"c"}', slow);
    expect(answers).toEqual(["a", "b", "c"].map((value) => ({ ok: true, value })));
    expect(allGood).toBe(true);
  });

  test("an input that is left out is empty, and --as is who writes unless the line says otherwise", async () => {
    const lines = '{"operation":"a"}\n{"operation":"b","input":{"x":1},"as":"Bo"}\n';
    const { answers } = await run(lines, echo, "Ada");
    expect(answers).toEqual([
      { ok: true, value: { operation: "a", input: {}, as: "Ada" } },
      { ok: true, value: { operation: "b", input: { x: 1 }, as: "Bo" } },
    ]);
  });

  test("a bad line is named and does not stop the next; blank lines are passed over but counted", async () => {
    const { answers, allGood } = await run('{"operation":\n\n["a"]\n{"operation":"good"}\n', echo);
    expect(allGood).toBe(false);
    expect(answers).toMatchObject([
      {
        ok: false,
        error: { code: "input-invalid", message: expect.stringContaining("Line 1"), details: { line: 1 } },
      },
      {
        ok: false,
        error: { code: "input-invalid", message: expect.stringContaining("Line 3"), details: { line: 3 } },
      },
      { ok: true, value: { operation: "good" } },
    ]);
  });

  test("a refused request and a thrown error are answers too", async () => {
    const { answers, allGood } = await run(
      '{"operation":"a"}\n{"operation":"b"}\n',
      async ({ operation }) => {
        if (operation === "a") throw new SillbookError("disk-full");
        throw new Error("a defect");
      },
    );
    expect(allGood).toBe(false);
    expect(answers.map((answer) => !answer.ok && answer.error.code)).toEqual(["disk-full", "unexpected"]);
  });

  test("whatever the lines hold and wherever the stream is cut, there is one answer a line", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(
          fc.oneof(
            fc.json({ noUnicodeString: true }),
            fc.string().map((text) => text.replace(/[\r\n\u2028\u2029]/g, " ")),
          ),
        ),
        fc.integer({ min: 1, max: 7 }),
        async (lines, chunkSize) => {
          const text = lines.map((line) => `${line}\n`).join("");
          const chunks = text.match(new RegExp(`[\\s\\S]{1,${chunkSize}}`, "g")) ?? [];
          const { answers } = await run(chunks, echo);
          expect(answers).toHaveLength(lines.filter((line) => line.trim() !== "").length);
        },
      ),
    );
  });
});

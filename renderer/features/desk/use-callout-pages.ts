import { useCallback, useEffect, useRef, useState } from "react";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import type { InputOf, OutputOf } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { asSillbookError } from "../../as-sillbook-error.ts";
import { onProgramEvent, request } from "../../shell-client.ts";

const pageLength = 100;
/** Entities whose change may change a row of the list. */
const concerned = new Set([
  "*",
  "callout",
  "callout event",
  "caller",
  "recorded fix",
  "lift",
  "site",
  "bridge",
  "danger",
]);

type ListInput = InputOf<"callout.list">;
type Pages = ReadonlyMap<number, readonly CalloutLine[]>;

export interface CalloutPages {
  /** Null until the first page is read. */
  readonly total: number | null;
  readonly lineAt: (index: number) => CalloutLine | undefined;
  /** Asks for the page that holds this row, once. */
  readonly want: (index: number) => void;
  readonly error: SillbookError | undefined;
  readonly reload: () => void;
}

/** A list of any length, read by the page as its rows are drawn. A new filter or order needs a new instance (a key). */
export function useCalloutPages(filter: ListInput["filter"], order: ListInput["order"]): CalloutPages {
  const [pages, setPages] = useState<Pages>(new Map());
  const [total, setTotal] = useState<number | null>(null);
  const [error, setError] = useState<SillbookError>();
  const { asked, read } = usePageReader(filter, order, (page, answer) => {
    if (answer instanceof SillbookError) return setError(answer);
    setError(undefined);
    setTotal(answer.total);
    setPages((before) => new Map(before).set(page, answer.callouts));
  });
  const want = useCallback(
    (index: number) => {
      const page = Math.floor(index / pageLength);
      if (!asked.has(page)) read(page);
    },
    [asked, read],
  );
  const reload = useCallback(() => {
    for (const page of new Set([...asked, 0])) read(page);
  }, [asked, read]);
  useEffect(() => {
    read(0);
    return onProgramEvent((event) => {
      if (event.kind === "changed" && event.records.some(({ entity }) => concerned.has(entity))) reload();
    });
  }, [read, reload]);
  const lineAt = useCallback(
    (index: number) => pages.get(Math.floor(index / pageLength))?.[index % pageLength],
    [pages],
  );
  return { total, lineAt, want, error, reload };
}

interface PageReader {
  /** Pages that were asked for, read or not. */
  readonly asked: ReadonlySet<number>;
  readonly read: (page: number) => void;
}

type Answer = OutputOf<"callout.list"> | SillbookError;

/** One page at a time, the newest wish first: after a long scroll the rows in view do not wait for those passed by. */
function usePageReader(
  filter: ListInput["filter"],
  order: ListInput["order"],
  onAnswer: (page: number, answer: Answer) => void,
): PageReader {
  const answered = useRef(onAnswer);
  answered.current = onAnswer;
  const [reader] = useState(() => {
    const asked = new Set<number>();
    const wishes: number[] = [];
    let isReading = false;
    const next = async (): Promise<void> => {
      if (isReading) return;
      const page = wishes.pop();
      if (page === undefined) return;
      isReading = true;
      try {
        const input = { filter, order, offset: page * pageLength, limit: pageLength };
        answered.current(page, await request("callout.list", input));
      } catch (reason) {
        asked.delete(page);
        answered.current(page, asSillbookError(reason));
      }
      isReading = false;
      void next();
    };
    const read = (page: number): void => {
      asked.add(page);
      if (!wishes.includes(page)) wishes.push(page);
      void next();
    };
    return { asked, read };
  });
  return reader;
}

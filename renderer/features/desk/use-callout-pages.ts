import { useCallback, useEffect, useRef, useState } from "react";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import type { InputOf } from "#shared-lib/contract/operations.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
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
  const asked = useRef(new Set<number>());
  const read = useCallback(
    (page: number) => {
      asked.current.add(page);
      request("callout.list", { filter, order, offset: page * pageLength, limit: pageLength }).then(
        (answer) => {
          setError(undefined);
          setTotal(answer.total);
          setPages((before) => new Map(before).set(page, answer.callouts));
        },
        (reason: unknown) => {
          asked.current.delete(page);
          setError(asSillbookError(reason));
        },
      );
    },
    [filter, order],
  );
  const want = useCallback(
    (index: number) => {
      const page = Math.floor(index / pageLength);
      if (!asked.current.has(page)) read(page);
    },
    [read],
  );
  const reload = useCallback(() => {
    for (const page of new Set([0, ...asked.current])) read(page);
  }, [read]);
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

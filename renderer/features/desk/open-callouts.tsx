import { Link, useNavigate } from "@tanstack/react-router";
import { useMemo, useRef, useState } from "react";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import type { InputOf } from "#shared-lib/contract/operations.ts";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { Kbd } from "../../ui/kbd.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { VirtualTable } from "../../ui/virtual-table.tsx";
import { useCommand } from "../../use-command.ts";
import { useDebounced } from "../../use-debounced.ts";
import { useNow } from "../../use-now.ts";
import { useRead } from "../../use-read.ts";
import { EndCalloutDialog } from "../callout/end-callout-dialog.tsx";
import { peopleAreInside } from "../callout/event-parts.ts";
import { NextEventDialog } from "../callout/next-event-dialog.tsx";
import { SaveList } from "../export/save-list-panel.tsx";
import { openColumns } from "./callout-columns.tsx";
import { OnDuty } from "./on-duty.tsx";

type Order = NonNullable<InputOf<"callout.list">["order"]>;

const orders: readonly { readonly id: Order; readonly words: string }[] = [
  { id: "people first", words: "people first, then longest wait" },
  { id: "newest first", words: "people first, then newest" },
  { id: "lift", words: "people first, then by lift" },
  { id: "next event", words: "people first, then by next event" },
];
const mostLines = 2000;

/** Every open callout, followed from here: people first in any order, waiting times running. */
export function OpenCallouts() {
  const region = useRef<HTMLElement>(null);
  const list = useOpenCallouts();
  const { lines, total, current, setCurrentId } = list;
  const navigate = useNavigate();
  const now = useNow();
  const columns = useMemo(() => openColumns(now), [now]);
  const [asking, setAsking] = useState<"event" | "end" | null>(null);
  const line = lines[current];
  useCommand({
    name: "Record the next event of the chosen callout",
    keys: "N",
    group: "Desk",
    when: line !== undefined,
    run: () => setAsking(line?.next === "closed" ? "end" : "event"),
  });
  useCommand({
    name: "Go to the open callouts",
    keys: "Alt O",
    group: "Desk",
    run: () => region.current?.querySelector<HTMLElement>('[role="row"][tabindex="0"]')?.focus(),
  });
  return (
    <section className="region open-callouts" ref={region} aria-label="Open callouts">
      <OpenHead list={list} total={total} />
      <ErrorNote error={list.error} onRetry={list.reload} />
      {lines.length === 0 && list.loaded ? (
        <EmptyState>
          {list.filter === "" ? "No callout is open." : `No open callout has “${list.filter}” in it.`}
        </EmptyState>
      ) : (
        <div className="open-frame">
          <VirtualTable
            label="Open callouts"
            className="open-list"
            columns={columns}
            rows={lines}
            rowKey={(one) => one.id}
            current={current}
            onCurrent={(index) => setCurrentId(lines[index]?.id ?? null)}
            onOpen={(one) => void navigate({ to: "/callout/$id", params: { id: one.id } })}
            rowClass={(one) => (peopleAreInside(one) ? "urgent" : "")}
          />
        </div>
      )}
      <OpenFoot />
      {asking === "event" && line !== undefined && (
        <NextEventDialog line={line} onClose={() => setAsking(null)} onEnd={() => setAsking("end")} />
      )}
      {asking === "end" && line !== undefined && (
        <EndCalloutDialog id={line.id} onClose={() => setAsking(null)} />
      )}
    </section>
  );
}

type OpenList = ReturnType<typeof useOpenCallouts>;

function useOpenCallouts() {
  const [filter, setFilter] = useState("");
  const [order, setOrder] = useState<Order>("people first");
  const [currentId, setCurrentId] = useState<string | null>(null);
  const asked = useDebounced(filter.trim(), 150);
  const input = { filter: { open: true, ...(asked === "" ? {} : { text: asked }) }, order };
  const read = useRead("callout.list", { ...input, limit: mostLines }, { keepPrevious: true });
  const lines = useMemo(() => peopleFirst(read.value?.callouts ?? []), [read.value]);
  // The chosen callout stays chosen when others come or go above it.
  const place = lines.findIndex((one) => one.id === currentId);
  return {
    ...{ filter, setFilter, order, setOrder, setCurrentId, lines, input },
    current: Math.max(place, 0),
    total: read.value?.total ?? 0,
    loaded: read.value !== undefined,
    error: read.error,
    reload: read.reload,
  };
}

/** Whatever the order, nobody inside is ever below a callout that can wait. */
export function peopleFirst(lines: readonly CalloutLine[]): readonly CalloutLine[] {
  return [...lines.filter(peopleAreInside), ...lines.filter((line) => !peopleAreInside(line))];
}

function OpenHead({ list, total }: { readonly list: OpenList; readonly total: number }) {
  return (
    <div className="open-head">
      <h2 className="nowrap">Open callouts: {total}</h2>
      <TextField label="Filter" value={list.filter} onChange={list.setFilter} type="search" />
      <SelectField<Order> label="Order" options={[...orders]} value={list.order} onChange={list.setOrder} />
      <span className="row open-links">
        <Link to="/desk" search={{ list: "left out" }}>
          Left out of service
        </Link>
        <Link to="/desk" search={{ list: "all" }}>
          All callouts
        </Link>
        <SaveList list="callouts" input={list.input} what="Open callouts" />
      </span>
    </div>
  );
}

function OpenFoot() {
  return (
    <div className="spread">
      <OnDuty />
      <span className="soft label wide-only">
        Open callouts <Kbd keys="Alt O" /> · move <Kbd keys="↑" /> <Kbd keys="↓" /> · next event{" "}
        <Kbd keys="N" /> · open <Kbd keys="Enter" />
      </span>
    </div>
  );
}

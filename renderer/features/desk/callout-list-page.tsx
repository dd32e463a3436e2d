import { Link, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo, useState } from "react";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import type { InputOf } from "#shared-lib/contract/operations.ts";
import { type FaultGroup, faultGroups } from "#shared-lib/words.ts";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { type VirtualColumn, VirtualTable } from "../../ui/virtual-table.tsx";
import { useDebounced } from "../../use-debounced.ts";
import { SaveList } from "../export/save-list-panel.tsx";
import { listColumns } from "./callout-columns.tsx";
import { type CalloutListChoice, calloutLists, listTitles } from "./callout-list-link.ts";
import { RowNotRead } from "./row-not-read.tsx";
import { useCalloutPages } from "./use-callout-pages.ts";

type Order = NonNullable<InputOf<"callout.list">["order"]>;
type Filter = NonNullable<InputOf<"callout.list">["filter"]>;

const orders: readonly { readonly id: Order; readonly words: string }[] = [
  { id: "newest first", words: "newest first" },
  { id: "oldest first", words: "oldest first" },
  { id: "lift", words: "by lift" },
];
const anyGroup = "any";

/** A list of callouts named in the address: those that a number of Review counts, closed ones, or all. */
export function CalloutListPage({ choice }: { readonly choice: CalloutListChoice }) {
  const [text, setText] = useState("");
  const [group, setGroup] = useState<FaultGroup | typeof anyGroup>(anyGroup);
  const [order, setOrder] = useState<Order>("newest first");
  const asked = useDebounced(text.trim(), 200);
  const filter = useMemo<Filter>(
    () => ({
      ...filterOf(choice),
      ...(asked === "" ? {} : { text: asked }),
      ...(group === anyGroup ? {} : { group }),
    }),
    [choice, asked, group],
  );
  return (
    <div className="callout-list-page">
      <div className="spread">
        <PageTitle title={choice.title} />
        <nav className="row" aria-label="Lists of callouts">
          <Link to="/desk">Back to Desk</Link>
          {calloutLists.map((list) => (
            <Link key={list} to="/desk" search={{ list }}>
              {listTitles[list]}
            </Link>
          ))}
        </nav>
      </div>
      <div className="fields-three">
        <TextField label="Filter" value={text} onChange={setText} type="search" />
        <SelectField<FaultGroup | typeof anyGroup>
          label="Fault group"
          options={[
            { id: anyGroup, words: "any fault group" },
            ...faultGroups.map((one) => ({ id: one, words: one })),
          ]}
          value={group}
          onChange={setGroup}
        />
        <SelectField<Order> label="Order" options={[...orders]} value={order} onChange={setOrder} />
      </div>
      <Rows key={JSON.stringify([filter, order])} filter={filter} order={order} title={choice.title} />
    </div>
  );
}

function filterOf(choice: CalloutListChoice): Filter {
  if (choice.ids !== null) return { ids: [...choice.ids] };
  if (choice.list === "left out") return { ending: "left out of service" };
  return choice.list === "all" ? {} : { open: choice.list === "open" };
}

interface RowsProps {
  readonly filter: Filter;
  readonly order: Order;
  readonly title: string;
}

function Rows({ filter, order, title }: RowsProps) {
  const navigate = useNavigate();
  const [current, setCurrent] = useState(0);
  const { total, lineAt, want, error, reload } = useCalloutPages(filter, order);
  const rows = useMemo(() => Array.from({ length: total ?? 0 }, (_, index) => index), [total]);
  const columns = useMemo(() => asRowColumns(lineAt, want), [lineAt, want]);
  const keyOf = useCallback((index: number) => index, []);
  if (total === null) return <ErrorNote error={error} onRetry={reload} />;
  return (
    <>
      <div className="spread">
        <p className="soft" role="status">
          {total === 1 ? "1 callout" : `${total} callouts`}
        </p>
        {total > 0 && <SaveList list="callouts" input={{ filter, order }} what={title} />}
      </div>
      <ErrorNote error={error} onRetry={reload} />
      {total === 0 ? (
        <EmptyState action={<Link to="/desk">Back to Desk</Link>}>No callout fits this list.</EmptyState>
      ) : (
        <div className="callout-list-frame">
          <VirtualTable
            label={title}
            className="callout-list"
            columns={columns}
            rows={rows}
            rowKey={keyOf}
            current={current}
            onCurrent={setCurrent}
            onOpen={(index) => {
              const line = lineAt(index);
              if (line !== undefined) void navigate({ to: "/callout/$id", params: { id: line.id } });
            }}
          />
        </div>
      )}
    </>
  );
}

/** Columns over row numbers: a row that was not read yet asks for its page when it is drawn. */
function asRowColumns(
  lineAt: (index: number) => CalloutLine | undefined,
  want: (index: number) => void,
): readonly VirtualColumn<number>[] {
  return listColumns(new Date()).map((column, place) => ({
    ...column,
    cell: (index: number) => {
      const line = lineAt(index);
      if (line !== undefined) return column.cell(line);
      return place === 0 ? <RowNotRead index={index} onDrawn={want} /> : null;
    },
  }));
}

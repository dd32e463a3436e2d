import { useNavigate } from "@tanstack/react-router";
import { type KeyboardEvent, useId, useState } from "react";
import { Button } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { VirtualList } from "../../ui/virtual-list.tsx";
import { useCommand } from "../../use-command.ts";
import { useRead } from "../../use-read.ts";
import { SaveList } from "../export/save-list-panel.tsx";
import { AddLiftDialog } from "./add-lift-dialog.tsx";
import { AddSiteDialog } from "./add-site-dialog.tsx";
import { type ListRow, rowsBySite, rowsOfHits } from "./lift-list-rows.ts";
import { LiftRow } from "./lift-row.tsx";
import "./lifts.css";

type Adds = "site" | "lift" | null;

/** Every site with its lifts; typing finds a lift by whatever is known about it. */
export function LiftsPage() {
  const [text, setText] = useState("");
  const [adds, setAdds] = useState<Adds>(null);
  const list = useLiftRows(text);
  useCommand({ name: "Add a lift", keys: "A", group: "Lifts", run: () => setAdds("lift") });
  const acts = (
    <div className="buttons">
      <Button onPress={() => setAdds("lift")} keys="A" disabled={list.siteCount === 0}>
        Add a lift
      </Button>
      <Button onPress={() => setAdds("site")}>Add a site</Button>
    </div>
  );
  const saves = list.siteCount !== undefined && list.siteCount > 0;
  return (
    <div className="lifts-page">
      <header className="lift-head">
        <div className="lift-head-words">
          <PageTitle title="Lifts" />
          <p className="soft label">{list.words}</p>
          {saves && (
            <p className="row">
              <span className="label">Lifts</span> <SaveList list="lifts" input={{ text }} />
              <span className="label">Sites</span> <SaveList list="sites" input={{}} />
            </p>
          )}
        </div>
        {acts}
      </header>
      <ErrorNote error={list.error} onRetry={list.reload} />
      {list.siteCount === 0 ? (
        <EmptyState action={<Button onPress={() => setAdds("site")}>Add the first site</Button>}>
          Sites with their lifts will stand here.
        </EmptyState>
      ) : (
        <FoundLifts text={text} onText={setText} rows={list.rows} />
      )}
      <AddSiteDialog open={adds === "site"} onClose={() => setAdds(null)} />
      <AddLiftDialog open={adds === "lift"} onClose={() => setAdds(null)} />
    </div>
  );
}

function useLiftRows(text: string) {
  const typed = text.trim();
  const lifts = useRead("lift.list", {});
  const sites = useRead("site.list", {});
  const hits = useRead(
    "lift.lookUp",
    { text: typed, limit: 50 },
    { enabled: typed !== "", keepPrevious: true },
  );
  const rows =
    typed === ""
      ? rowsBySite(sites.value?.sites ?? [], lifts.value?.lifts ?? [])
      : rowsOfHits(hits.value?.lifts ?? []);
  const siteCount = sites.value?.sites.length;
  const liftCount = lifts.value?.lifts.length ?? 0;
  return {
    rows,
    siteCount,
    words: siteCount === undefined ? "Reading" : countWords(liftCount, siteCount),
    error: lifts.error ?? sites.error ?? hits.error,
    reload: () => {
      lifts.reload();
      sites.reload();
      hits.reload();
    },
  };
}

function countWords(lifts: number, sites: number): string {
  return `${lifts === 1 ? "1 lift" : `${lifts} lifts`} at ${sites === 1 ? "1 site" : `${sites} sites`}`;
}

interface FoundLiftsProps {
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly rows: readonly ListRow[];
}

/** The arrows walk the list while the box keeps the text; Enter opens. */
function FoundLifts({ text, onText, rows }: FoundLiftsProps) {
  const navigate = useNavigate();
  const listId = useId();
  const [current, setCurrent] = useState(-1);
  const open = (row: ListRow) => {
    void navigate(
      row.kind === "site"
        ? { to: "/site/$id", params: { id: row.id } }
        : { to: "/lift/$id", params: { id: row.id } },
    );
  };
  const walk = (event: KeyboardEvent<HTMLInputElement>) => {
    const chosen = rows[current] ?? (text.trim() === "" ? undefined : rows[0]);
    if (event.key === "ArrowDown") setCurrent(Math.min(rows.length - 1, current + 1));
    else if (event.key === "ArrowUp") setCurrent(Math.max(0, current - 1));
    else if (event.key === "Enter" && chosen !== undefined) open(chosen);
    else if (event.key === "Escape" && text !== "") onText("");
    else return;
    event.preventDefault();
  };
  return (
    <>
      <TextField
        label="Find a lift"
        hint="site, street, name, plate or a caller’s number"
        type="search"
        autoFocus
        value={text}
        onChange={(next) => {
          setCurrent(-1);
          onText(next);
        }}
        onKeyDown={walk}
      />
      <div className="lifts-list">
        {rows.length === 0 && text.trim() !== "" ? (
          <EmptyState>
            No lift is found by these words. A part of the site or the street is enough.
          </EmptyState>
        ) : (
          <VirtualList
            label="Sites and lifts"
            id={listId}
            items={rows}
            itemKey={(row) => `${row.kind} ${row.id}`}
            renderItem={(row) => <Row row={row} searched={text.trim() !== ""} />}
            current={current}
            onCurrent={setCurrent}
            onOpen={open}
            rowHeight={52}
          />
        )}
      </div>
    </>
  );
}

function Row({ row, searched }: { readonly row: ListRow; readonly searched: boolean }) {
  if (row.kind === "site") {
    return (
      <span className="site-row">
        <span className="site-row-name">{row.name}</span> <span className="soft label">{row.facts}</span>
      </span>
    );
  }
  const { lift, because } = row;
  return <LiftRow lift={lift} title={searched ? lift.title : lift.name} because={because} />;
}

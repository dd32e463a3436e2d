import type { Bridge, Danger } from "#shared-lib/contract/bridge.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { EmptyState } from "../../ui/empty-state.tsx";
import { Mark } from "../../ui/mark.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { Timeline } from "../../ui/timeline.tsx";
import { bridgeAcross } from "./bridge-parts.ts";
import "./bridges.css";

interface BridgeRegisterProps {
  readonly bridges: readonly Bridge[];
  readonly dangers: readonly Danger[];
}

/** Every bridge that was ever entered on a lift, open ones first, and every danger found. */
export function BridgeRegister({ bridges, dangers }: BridgeRegisterProps) {
  return (
    <div className="stack">
      {bridges.length === 0 ? (
        <EmptyState>No bridge was ever entered on this lift.</EmptyState>
      ) : (
        <div className="scroll-frame">
          <Table
            label="Bridge register"
            columns={registerColumns}
            rows={bridges}
            rowKey={(bridge) => bridge.id}
          />
        </div>
      )}
      {dangers.length > 0 && <Timeline label="Dangers found" items={dangers.map(dangerItem)} />}
    </div>
  );
}

function dangerItem(danger: Danger) {
  const cleared =
    danger.clearedAt === null
      ? "Not cleared yet"
      : `Cleared ${formatDayAndTime(danger.clearedAt)}, ${danger.clearedBy?.name ?? ""}: ${danger.clearedHow}`;
  return {
    id: danger.id,
    at: danger.foundAt,
    mark: "bridge" as const,
    pencil: danger.clearedAt === null,
    words: `Car door and landing door found bridged together: ${danger.words}. ${danger.foundBy.name}`,
    after: cleared,
  };
}

/** The fields of the register (F9.20), one bridge a row; what belongs together stands in one cell. */
export const registerColumns: readonly TableColumn<Bridge>[] = [
  {
    id: "number",
    head: "Number",
    rowHead: true,
    cell: (bridge) => <span className="nowrap">{bridge.number}</span>,
  },
  { id: "state", head: "State", cell: (bridge) => <BridgeState bridge={bridge} /> },
  {
    id: "contact",
    head: "Contact and points",
    cell: (bridge) => (
      <>
        {bridgeAcross(bridge).replace(/^the /, "")}
        <br />
        <span className="marking">{bridge.points}</span>
      </>
    ),
  },
  {
    id: "lead",
    head: "Lead",
    cell: (bridge) =>
      bridge.leadNumber === "" ? (
        <span className="soft">no number</span>
      ) : (
        <span className="marking">{bridge.leadNumber}</span>
      ),
  },
  { id: "why", head: "Why", cell: (bridge) => bridge.reason },
  {
    id: "set",
    head: "Set, under",
    cell: (bridge) => <WhoWhen at={bridge.setAt} by={bridge.setBy.name} more={`${bridge.control} control`} />,
  },
  {
    id: "removed",
    head: "Taken out",
    cell: (bridge) =>
      bridge.removedAt === null ? (
        <span className="soft">not yet</span>
      ) : (
        <WhoWhen at={bridge.removedAt} by={bridge.removedBy?.name ?? ""} more={bridge.removalNote} />
      ),
  },
  {
    id: "checked",
    head: "Second check, proof",
    cell: (bridge) =>
      bridge.checkedAt === null ? (
        <span className="soft">not yet</span>
      ) : (
        <WhoWhen at={bridge.checkedAt} by={bridge.checkedBy?.name ?? ""} more={bridge.proof} />
      ),
  },
];

function BridgeState({ bridge }: { readonly bridge: Bridge }) {
  if (!bridge.open) return <Mark kind="flush" word="removed, checked" />;
  const word = bridge.removedAt === null ? "open" : "taken out, not checked";
  return <Mark kind="bridge" word={word} pencil strong />;
}

function WhoWhen({ at, by, more }: { readonly at: string; readonly by: string; readonly more: string }) {
  return (
    <>
      <span className="nowrap">{formatDayAndTime(at)}</span>
      <br />
      {by}
      {more !== "" && (
        <>
          <br />
          <span className="soft">{more}</span>
        </>
      )}
    </>
  );
}

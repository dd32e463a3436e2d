import { memo, useEffect, useId, useRef } from "react";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { formatFraction } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { MarkedText } from "../../ui/marked-text.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import type { ResultGroup, ResultItem } from "./result-groups.ts";
import { ResultMarkShape } from "./result-mark.tsx";

interface ResultListProps {
  readonly groups: readonly ResultGroup[];
  readonly chosenKey: string | null;
  readonly onChoose: (key: string) => void;
  readonly onOpen: (item: ResultItem) => void;
  /** Their state is seen wherever a lift is seen. */
  readonly lifts: ReadonlyMap<string, LiftLine>;
  /** Shows the rest of a group. */
  readonly onUnfold: (groupKey: string) => void;
}

export function listId(groupKey: string): string {
  return `find-list-${groupKey.replace(/\W+/g, "-")}`;
}

export function lineId(itemKey: string): string {
  return `find-line-${itemKey.replace(/\W+/g, "-")}`;
}

/** Groups as ruled titles with their count, best first; each line is one target over its whole width. */
export function ResultList(props: ResultListProps) {
  return props.groups.map((group) => <Group key={group.key} group={group} {...props} />);
}

function Group({
  group,
  chosenKey,
  onChoose,
  onOpen,
  lifts,
  onUnfold,
}: ResultListProps & { group: ResultGroup }) {
  const titleId = useId();
  const { key, title, total, items } = group;
  const folded = items.length < total;
  return (
    <section className="find-group">
      <RuledTitle
        id={titleId}
        count={folded ? formatFraction(items.length, total) : total}
        aside={
          folded && (
            <Button kind="quiet" onPress={() => onUnfold(key)} label={`All ${total} of ${title}`}>
              All {total}
            </Button>
          )
        }
      >
        {title}
      </RuledTitle>
      <div id={listId(key)} role="listbox" aria-labelledby={titleId} tabIndex={-1} className="find-lines">
        {items.map((item) => (
          <Line
            key={item.key}
            item={item}
            chosen={item.key === chosenKey}
            onChoose={onChoose}
            onOpen={onOpen}
            lift={item.kind === "lift" ? lifts.get(item.id) : undefined}
          />
        ))}
      </div>
    </section>
  );
}

interface LineProps {
  readonly item: ResultItem;
  readonly chosen: boolean;
  readonly onChoose: (key: string) => void;
  readonly onOpen: (item: ResultItem) => void;
  readonly lift: LiftLine | undefined;
}

/** Where the preview stands below all results, a press opens at once. */
function isOneColumn(): boolean {
  return matchMedia("(max-width: 48rem)").matches;
}

const Line = memo(function Line({ item, chosen, onChoose, onOpen, lift }: LineProps) {
  const line = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (chosen) line.current?.scrollIntoView({ block: "nearest" });
  }, [chosen]);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the search box has the keyboard and opens the chosen line.
    <div
      ref={line}
      id={lineId(item.key)}
      role="option"
      tabIndex={-1}
      aria-selected={chosen}
      className="find-line"
      onClick={() => (chosen || isOneColumn() ? onOpen(item) : onChoose(item.key))}
    >
      <ResultMarkShape kind={item.mark} />
      <div className="find-line-words">
        <div className="find-line-title">
          <span>
            <span className="seen-by-reader-only">{item.markWord}: </span>
            <MarkedText text={item.title} ranges={item.titleMarks} />
          </span>
          {item.number !== null && <span className="find-line-number">{item.number}</span>}
        </div>
        <div className="find-line-why">
          <MarkedText text={item.second} ranges={item.secondMarks} />
          {item.second !== "" && item.why !== "" && " · "}
          {item.why}
        </div>
        {lift !== undefined && <LiftState lift={lift} short />}
      </div>
    </div>
  );
});

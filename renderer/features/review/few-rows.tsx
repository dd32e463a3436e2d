import { type ReactNode, useState } from "react";
import { Button } from "../../ui/button.tsx";

export const fewRows = 6;

/** A long table with its first rows as it is sorted now; the others on demand. */
export function FewRows(props: {
  readonly count: number;
  /** "lifts": for "All 40 lifts". */
  readonly what: string;
  readonly children: ReactNode;
}) {
  const { count, what, children } = props;
  const [all, setAll] = useState(false);
  if (count <= fewRows) return <div className="review-rows">{children}</div>;
  return (
    <div>
      <div className={all ? "review-rows" : "review-rows review-few"}>{children}</div>
      <MoreButton all={all} onAll={setAll} words={`All ${count} ${what}`} />
    </div>
  );
}

export function MoreButton(props: {
  readonly all: boolean;
  readonly onAll: (all: boolean) => void;
  readonly words: string;
}) {
  const { all, onAll, words } = props;
  return (
    <>
      <Button
        kind="quiet"
        expanded={all}
        onPress={() => onAll(!all)}
        label={all ? `Only the first: ${words}` : words}
      >
        {all ? "Only the first" : words}
      </Button>
      {!all && <p className="review-printed">{words} are on the screen; the first ones are printed.</p>}
    </>
  );
}

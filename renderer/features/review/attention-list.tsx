import { Link } from "@tanstack/react-router";
import { useState } from "react";
import { Button } from "../../ui/button.tsx";
import { TriangleNumber } from "../../ui/triangle-number.tsx";
import type { AttentionItem } from "./attention.ts";
import { CalloutsLink } from "./callouts-link.tsx";
import { calloutsWord } from "./review-words.ts";

const firstShown = 6;

/** What needs a person now, in sentences with the red pencil's numbers; each leads to its place. */
export function AttentionList({ items }: { readonly items: readonly AttentionItem[] }) {
  const [all, setAll] = useState(false);
  if (items.length === 0) {
    return (
      <p className="review-quiet">
        Nothing needs a person now: nobody is recorded inside a lift, no bridge is open, no danger is
        recorded, no chain of repeats goes on.
      </p>
    );
  }
  return (
    <section aria-label="What needs a person now">
      <ol className="review-lead">
        {(all ? items : items.slice(0, firstShown)).map((item, index) => (
          <li key={item.key}>
            <TriangleNumber number={index + 1} />
            <p>
              <Link
                to={item.to.kind === "lift" ? "/lift/$id" : "/callout/$id"}
                params={{ id: item.to.id }}
                className="strong"
              >
                {item.lead}
              </Link>{" "}
              {item.rest}
              {item.calloutIds.length > 0 && (
                <>
                  {" "}
                  <CalloutsLink ids={item.calloutIds} title={item.listTitle}>
                    {calloutsWord(item.calloutIds.length)}
                  </CalloutsLink>
                </>
              )}
            </p>
          </li>
        ))}
      </ol>
      {items.length > firstShown && (
        <Button kind="quiet" expanded={all} onPress={() => setAll(!all)}>
          {all ? `Only the first ${firstShown}` : `All ${items.length} that need a person`}
        </Button>
      )}
    </section>
  );
}

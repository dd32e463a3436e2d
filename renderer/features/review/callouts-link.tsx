import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import { calloutsPlace } from "./callouts-place.ts";

/** More than the list takes. */
const mostListed = 5000;

interface CalloutsLinkProps {
  readonly ids: readonly string[];
  /** What the list shows, in words; also what a reader hears of the link. */
  readonly title: string;
  readonly children: ReactNode;
  /** Alone in a cell of a table: as high as a row. */
  readonly inCell?: boolean;
}

/** A number that opens exactly the callouts it counts; nothing to open: the number alone. */
export function CalloutsLink({ ids, title, children, inCell = false }: CalloutsLinkProps) {
  if (ids.length === 0 || ids.length > mostListed) return <>{children}</>;
  return (
    <Link
      {...calloutsPlace(ids, title)}
      className={inCell ? "review-number" : ""}
      aria-label={`${typeof children === "string" || typeof children === "number" ? children : ids.length}: ${title}`}
    >
      {children}
    </Link>
  );
}

import { MarkShape } from "../../ui/mark.tsx";
import type { ResultMark } from "./result-groups.ts";

const ownShapes = {
  lift: "M3 1.5V18.5M17 1.5V18.5M6 5H14V15H6ZM10 5V15",
  check: "M1 5H12M1 10H12M1 15H12M13.5 5.5L15 7L18.5 2.5",
} as const;

/** The shape before a result; its word stands beside it for a reader. */
export function ResultMarkShape({ kind }: { readonly kind: ResultMark }) {
  if (kind !== "lift" && kind !== "check") return <MarkShape kind={kind} />;
  return (
    <svg className="mark" viewBox="0 0 20 20" aria-hidden="true">
      <path d={ownShapes[kind]} />
    </svg>
  );
}

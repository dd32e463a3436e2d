import { Link, useNavigate } from "@tanstack/react-router";
import type { ReactNode } from "react";
import { buttonClass } from "../../ui/button.tsx";
import { type MarkKind, MarkShape } from "../../ui/mark.tsx";
import type { Place } from "./result-link.ts";

interface PlaceLinkProps {
  readonly place: Place;
  readonly children: ReactNode;
  /** As a button; left out: an underlined word in the text. */
  readonly kind?: "first" | "plain" | "quiet";
  readonly mark?: MarkKind;
  readonly className?: string;
}

/** A link to a place computed at run time. */
export function PlaceLink({ place, children, kind, mark, className }: PlaceLinkProps) {
  return (
    <Link
      {...routed(place)}
      {...(kind === undefined ? {} : { className: buttonClass(kind) })}
      {...(className === undefined ? {} : { className })}
    >
      {mark !== undefined && <MarkShape kind={mark} />}
      {kind === undefined ? children : <span className="button-word">{children}</span>}
    </Link>
  );
}

export function useGoTo(): (place: Place) => void {
  const navigate = useNavigate();
  return (place) => void navigate(routed(place));
}

// The router types its paths as literals; every place that `opens.ts` makes is one of them with its parameter filled in.
function routed({ to, search }: Place): { to: "/find"; search: Record<string, unknown> } {
  return { to: to as "/find", search: search ?? {} };
}

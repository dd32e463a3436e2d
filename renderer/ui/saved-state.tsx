import { formatTime } from "#shared-lib/format.ts";
import { MarkShape } from "./mark.tsx";

export type SavedStateProps =
  | { readonly kind: "saved"; readonly at: string; readonly words?: string }
  | { readonly kind: "saving" }
  | { readonly kind: "not saved yet"; readonly keptAt?: string | null; readonly before?: string }
  | { readonly kind: "not saved"; readonly reason: string };

/** Flush sills only when it is on disk; broken before; stepped and red pencil on failure, until it is solved. */
export function SavedState(props: SavedStateProps) {
  if (props.kind === "saved") {
    return (
      <span className="saved-state">
        <MarkShape kind="flush" />
        <span>
          {props.words ?? "Saved"} {formatTime(props.at)}
        </span>
      </span>
    );
  }
  if (props.kind === "not saved") {
    return (
      <span className="saved-state pencil strong" role="alert">
        <MarkShape kind="stepped" />
        <span>{props.reason}</span>
      </span>
    );
  }
  return (
    <span className="saved-state soft">
      <MarkShape kind="unchecked" />
      <span>{props.kind === "saving" ? "Saving" : notSavedYet(props)}</span>
    </span>
  );
}

function notSavedYet({ before, keptAt }: { before?: string; keptAt?: string | null }): string {
  const parts = [before, "not saved yet", keptAt == null ? undefined : `draft kept ${formatTime(keptAt)}`];
  return parts.filter((part) => part !== undefined).join(" · ");
}

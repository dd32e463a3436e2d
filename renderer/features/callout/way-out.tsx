import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import type { ErrorCode, SillbookError } from "#shared-lib/errors.ts";
import { ErrorNote } from "../../ui/error-note.tsx";

interface RefusedProps {
  readonly error: SillbookError | undefined;
  /** The callout whose page has what the way out needs; left out on that page itself. */
  readonly calloutId?: string | undefined;
  readonly fieldWords?: (path: string) => string | undefined;
  /** A button that goes the way out, where this screen has one. */
  readonly action?: ReactNode;
}

/** A refusal in words, and what to do so that it is refused no longer. */
export function Refused({ error, calloutId, fieldWords, action }: RefusedProps) {
  if (error === undefined) return null;
  const way = waysOut[error.code];
  return (
    <div className="stack">
      <ErrorNote error={error} {...(fieldWords === undefined ? {} : { fieldWords })} />
      {way !== undefined && (
        <p>
          <b>The way out:</b> {way}{" "}
          {calloutId !== undefined && (
            <Link to="/callout/$id" params={{ id: calloutId }}>
              Open the callout
            </Link>
          )}
        </p>
      )}
      {action}
    </div>
  );
}

const waysOut: { readonly [Code in ErrorCode]?: string } = {
  "bridge-open":
    "take the bridge out, record its removal in the strip on the callout or the lift, and let a second look at the place confirm it. Then record back in service.",
  "danger-open":
    "keep the lift out of service. Record how the danger was cleared, and by whom, on the callout or the lift. People released and made safe can be recorded at any time.",
  "people-inside":
    "record people released with its time. Where it is not known whether anyone is inside, settle that on the callout first: nobody, or people inside.",
  "register-not-compared":
    "name the person who stood at the shaft and compared it with the bridge register, contact by contact.",
  "person-missing": "choose your name at the foot of the column, then save again. What you typed is kept.",
};

import type { ReactNode } from "react";

/** Beside the work it is about; at most four short sentences; cannot be closed. */
export function Caution({ children }: { readonly children: ReactNode }) {
  return (
    <div className="caution" role="note" aria-label="Caution">
      <span className="caution-word">Caution.</span> {children}
    </div>
  );
}

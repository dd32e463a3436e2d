import type { ReactNode } from "react";

interface EmptyStateProps {
  /** One sentence: what would be here. */
  readonly children: ReactNode;
  /** One button that makes the first. */
  readonly action?: ReactNode;
}

export function EmptyState({ children, action }: EmptyStateProps) {
  return (
    <div className="empty-state">
      <p>{children}</p>
      {action}
    </div>
  );
}

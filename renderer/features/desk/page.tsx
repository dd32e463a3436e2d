import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function DeskPage() {
  return (
    <>
      <PageTitle title="Desk" />
      <EmptyState>
        Here callouts will be logged while the caller is on the phone, and open ones followed.
      </EmptyState>
    </>
  );
}

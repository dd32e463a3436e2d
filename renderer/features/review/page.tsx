import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function ReviewPage() {
  return (
    <>
      <PageTitle title="Review" />
      <EmptyState>Here what keeps coming back will be shown.</EmptyState>
    </>
  );
}

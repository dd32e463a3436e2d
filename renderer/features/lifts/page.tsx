import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function LiftsPage() {
  return (
    <>
      <PageTitle title="Lifts" />
      <EmptyState>Here the sites and their lifts will be listed.</EmptyState>
    </>
  );
}

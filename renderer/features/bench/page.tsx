import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function BenchPage() {
  return (
    <>
      <PageTitle title="Bench" />
      <EmptyState>Here the calculators will be listed.</EmptyState>
    </>
  );
}

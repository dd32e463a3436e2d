import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function ChecksPage() {
  return (
    <>
      <PageTitle title="Checks" />
      <EmptyState>Here check plans, traces and the bridge register will be listed.</EmptyState>
    </>
  );
}

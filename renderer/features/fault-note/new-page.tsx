import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function NewFaultNotePage() {
  return (
    <>
      <PageTitle title="New fault note" />
      <EmptyState>Here a new fault note will be written.</EmptyState>
    </>
  );
}

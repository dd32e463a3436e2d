import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function VisitPrintPage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Visit sheet" />
      <EmptyState>Here the visit will stand on one page for printing.</EmptyState>
    </>
  );
}

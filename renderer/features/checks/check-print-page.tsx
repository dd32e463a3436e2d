import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function CheckPrintPage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Signal check" />
      <EmptyState>Here the check will stand on one page for printing.</EmptyState>
    </>
  );
}

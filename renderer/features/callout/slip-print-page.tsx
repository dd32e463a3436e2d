import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function SlipPrintPage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Callout slip" />
      <EmptyState>Here the callout will stand on one page for printing.</EmptyState>
    </>
  );
}

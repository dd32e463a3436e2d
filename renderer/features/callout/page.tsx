import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function CalloutPage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Callout" />
      <EmptyState>Here one callout will stand: its events, visits, bridges and how it ended.</EmptyState>
    </>
  );
}

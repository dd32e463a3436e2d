import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function CheckPage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Signal check" />
      <EmptyState>Here one check will be carried out, step by step.</EmptyState>
    </>
  );
}

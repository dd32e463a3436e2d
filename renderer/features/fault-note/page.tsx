import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function FaultNotePage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Fault note" />
      <EmptyState>Here one fault note will stand: symptoms, causes and how to tell them apart.</EmptyState>
    </>
  );
}

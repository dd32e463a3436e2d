import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function LiftPrintPage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Take this lift with me" />
      <EmptyState>Here all that is known about the lift will stand for printing.</EmptyState>
    </>
  );
}

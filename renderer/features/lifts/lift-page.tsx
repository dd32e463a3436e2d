import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function LiftPage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Lift" />
      <EmptyState>Here one lift will stand: its shaft section, signals and timeline.</EmptyState>
    </>
  );
}

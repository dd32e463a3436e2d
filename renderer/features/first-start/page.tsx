import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function FirstStartPage() {
  return (
    <>
      <PageTitle title="Sillbook" />
      <EmptyState>Here the company and the first person will be entered.</EmptyState>
    </>
  );
}

import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function FindPage() {
  return (
    <>
      <PageTitle title="Find" />
      <EmptyState>
        Here fault notes, recorded fixes and callouts will be found by what a person would say.
      </EmptyState>
    </>
  );
}

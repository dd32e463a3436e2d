import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function CalculatorPage(_props: { readonly calculator: string }) {
  return (
    <>
      <PageTitle title="Calculator" />
      <EmptyState>Here one calculator will take readings and give its verdict.</EmptyState>
    </>
  );
}

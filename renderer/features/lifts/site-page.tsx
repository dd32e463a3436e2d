import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function SitePage(_props: { readonly id: string }) {
  return (
    <>
      <PageTitle title="Site" />
      <EmptyState>Here one site will stand: access, keys, hours and its lifts.</EmptyState>
    </>
  );
}

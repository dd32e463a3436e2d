import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";

export function SettingsPage() {
  return (
    <>
      <PageTitle title="Settings" />
      <EmptyState>Here people, backups, import and export will be set.</EmptyState>
    </>
  );
}

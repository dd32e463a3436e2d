import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import { formatDate, formatTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";

type Backup = OutputOf<"backup.list">["backups"][number];

interface TroublePageProps {
  readonly error: SillbookError;
  readonly onSolved: () => void;
}

/** The database cannot be opened: what happened, what was left alone, and the newest backup first. */
export function TroublePage({ error, onSolved }: TroublePageProps) {
  const list = useRead("backup.list", {});
  const restore = useWrite("backup.restore");
  const backups = list.value?.backups ?? [];
  const put = async (backup: Backup): Promise<void> => {
    const result = await restore.run({ name: backup.name });
    if (result.ok) onSolved();
  };
  return (
    <div className="stack">
      <PageTitle title="The records cannot be opened" />
      <ErrorNote error={error} onRetry={onSolved} />
      <RuledTitle count={backups.length}>Backups in this data folder</RuledTitle>
      {backups.length === 0 ? (
        <p>There is none here. If you keep one elsewhere, copy it into the folder “backups” and try again.</p>
      ) : (
        <ul className="stack">
          {backups.map((backup, index) => (
            <li key={backup.name} className="row">
              <span>
                {formatDate(backup.madeAt)}, {formatTime(backup.madeAt)}, {backup.kind.replaceAll("-", " ")}
              </span>
              <Button
                kind={index === 0 ? "first" : "plain"}
                pending={restore.pending}
                onPress={() => void put(backup)}
              >
                Restore this backup
              </Button>
            </li>
          ))}
        </ul>
      )}
      <p className="soft">
        The file that cannot be opened is kept as it is, beside the backups. Compare the bridge register with
        the shaft after a restore: what was entered since the backup is not in it.
      </p>
      <ErrorNote error={restore.error} />
    </div>
  );
}

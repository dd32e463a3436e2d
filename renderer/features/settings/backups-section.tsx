import { useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDate, formatQuantity, formatTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";

type Backup = OutputOf<"backup.list">["backups"][number];

const kindWords: Readonly<Record<Backup["kind"], string>> = {
  daily: "daily",
  "by-hand": "by hand",
  "before-migration": "before an update",
  "before-restore": "before a restore",
};

export function backupWords(backup: Backup): string {
  return `${formatDate(backup.madeAt)}, ${formatTime(backup.madeAt)}`;
}

export function BackupsSection() {
  const { device } = useProgram();
  const list = useRead("backup.list", {});
  const [chosen, setChosen] = useState<Backup | null>(null);
  return (
    <section className="stack">
      <RuledTitle>Data folder and backups</RuledTitle>
      <p className="settings-folder">
        <span className="marking">{device.dataFolder}</span>
      </p>
      <p className="soft">
        One SQLite file with its backups. While Sillbook runs, no other program may open the file: make a copy
        for other tools instead. Seven days and four weeks of daily backups are kept. They lie on the same
        disk: keep a copy elsewhere too.
      </p>
      <Table
        label="Backups"
        columns={backupColumns(setChosen)}
        rows={list.value?.backups ?? []}
        rowKey={(backup) => backup.name}
        empty={<p>No backup yet.</p>}
      />
      <ErrorNote error={list.error} />
      <BackupActs onMade={list.reload} />
      {chosen !== null && <RestoreDialog backup={chosen} onClose={() => setChosen(null)} />}
    </section>
  );
}

function backupColumns(onRestore: (backup: Backup) => void): TableColumn<Backup>[] {
  return [
    { id: "when", head: "Made", rowHead: true, cell: backupWords },
    { id: "kind", head: "Kind", cell: (backup) => kindWords[backup.kind] },
    { id: "size", head: "Size", number: true, cell: (backup) => formatQuantity(backup.bytes / 1e6, "MB", 1) },
    {
      id: "restore",
      head: "Put back",
      cell: (backup) => (
        <Button
          kind="quiet"
          onPress={() => onRestore(backup)}
          label={`Restore the backup of ${backupWords(backup)}`}
        >
          Restore
        </Button>
      ),
    },
  ];
}

function BackupActs({ onMade }: { readonly onMade: () => void }) {
  const make = useWrite("backup.make");
  const copy = useWrite("store.copy");
  const [copied, setCopied] = useState("");
  const makeBackup = async (): Promise<void> => {
    await make.run({});
    onMade();
  };
  const makeCopy = async (): Promise<void> => {
    const result = await copy.run({});
    if (result.ok) setCopied(result.value.file);
  };
  return (
    <>
      <div className="buttons">
        <Button onPress={() => void makeBackup()} pending={make.pending}>
          Back up now
        </Button>
        <Button onPress={() => void makeCopy()} pending={copy.pending}>
          Copy for other tools
        </Button>
      </div>
      {copied !== "" && (
        <p role="status" className="settings-folder">
          The copy is there: <span className="marking">{copied}</span>
        </p>
      )}
      <ErrorNote error={make.error ?? copy.error} />
    </>
  );
}

function RestoreDialog({ backup, onClose }: { readonly backup: Backup; readonly onClose: () => void }) {
  const restore = useWrite("backup.restore");
  return (
    <Dialog
      title="Put this backup in place of the present data?"
      role="alertdialog"
      open
      onClose={onClose}
      actions={
        <>
          <Button
            kind="first"
            pending={restore.pending}
            onPress={async () => {
              const result = await restore.run({ name: backup.name });
              if (result.ok) onClose();
            }}
          >
            Restore
          </Button>
          <Button onPress={onClose}>Leave as it is</Button>
        </>
      }
    >
      <p>
        The data will be as it was on {backupWords(backup)}. What is there now is kept as a backup first, so
        this can be taken back. Compare the bridge register with the shaft afterwards: bridges entered since
        then are not in the backup.
      </p>
      <ErrorNote error={restore.error} />
    </Dialog>
  );
}

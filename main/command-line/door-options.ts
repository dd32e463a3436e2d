import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { defaultDataFolder } from "../data/data-folder.ts";

export interface DoorOptions {
  /** Absolute path. */
  readonly folder: string;
  readonly demonstration: boolean;
  /** Undefined: the shell chooses. */
  readonly port: number | undefined;
  /** Whether the browser is opened. */
  readonly open: boolean;
}

/**
 * The options both shells are started with. The start command has checked them; a packaged program may find switches
 * of Chromium or of the desktop among them, which are not ours to refuse.
 */
export function readDoorOptions(args: readonly string[]): DoorOptions {
  const { values } = parseArgs({
    args: [...args],
    strict: false,
    options: {
      demo: { type: "boolean" },
      data: { type: "string" },
      port: { type: "string" },
      "no-open": { type: "boolean" },
    },
  });
  const demonstration = values.demo === true;
  return {
    folder: typeof values.data === "string" ? resolve(values.data) : usualFolder(demonstration),
    demonstration,
    port: typeof values.port === "string" ? Number(values.port) : undefined,
    open: values["no-open"] !== true,
  };
}

/** The demonstration company never shares a folder with a company's own data. */
function usualFolder(demonstration: boolean): string {
  return demonstration ? `${defaultDataFolder()}-demonstration` : defaultDataFolder();
}

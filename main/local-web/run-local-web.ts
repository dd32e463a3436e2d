import { SillbookError } from "#shared-lib/errors.ts";
import type { Shown } from "../command-line/ask-door.ts";
import type { DoorOptions } from "../command-line/door-options.ts";
import { holdOrShow } from "../command-line/held-folder.ts";
import { type LocalWebServer, startLocalWebServer } from "./local-web-server.ts";
import { openBrowser } from "./open-browser.ts";

/** What a browser keeps for a page it keeps by port, so the port stays the same where it can. */
const usualPorts = { company: 47_115, demonstration: 47_116 };

/**
 * Starts the local web shell on a data folder, or opens the program that already runs on it.
 * @returns undefined when another process was shown instead.
 */
export async function runLocalWeb(
  options: DoorOptions & { readonly bundleFolder: string },
): Promise<{ close(): Promise<void> } | undefined> {
  const { folder, demonstration } = options;
  let tellServing: (server: Promise<LocalWebServer>) => void = () => {};
  const serving = new Promise<LocalWebServer>((resolve) => {
    tellServing = resolve;
  });
  const show = async (): Promise<Shown> => ({ in: "browser", address: (await serving).openingAddress() });
  const opened = await holdOrShow({ folder, demonstration, show });
  if ("shown" in opened) {
    await tellShown(opened.shown, options.open);
    return undefined;
  }
  const { held } = opened;
  tellServing(startServer(options, held.data));
  let server: LocalWebServer;
  try {
    server = await serving;
  } catch (error) {
    await held.close();
    throw error;
  }
  console.log(`Data folder: ${folder}`);
  await present("Sillbook is running", server.openingAddress(), options.open);
  console.log("Stop it with Ctrl-C.");
  return {
    close: async () => {
      await server.close();
      await held.close();
    },
  };
}

async function startServer(
  { port, demonstration, bundleFolder }: DoorOptions & { readonly bundleFolder: string },
  data: Parameters<typeof startLocalWebServer>[0]["data"],
): Promise<LocalWebServer> {
  const wanted = port ?? (demonstration ? usualPorts.demonstration : usualPorts.company);
  try {
    return await startLocalWebServer({ data, bundleFolder, port: wanted });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EADDRINUSE") throw error;
    if (port === undefined) return startLocalWebServer({ data, bundleFolder, port: 0 });
    const words = `Port ${port} is taken by another program. Choose another with --port, or leave it out.`;
    throw new SillbookError("input-invalid", words, { port });
  }
}

async function tellShown(shown: Shown, open: boolean): Promise<void> {
  if (shown.in === "window") console.log("Sillbook is already running; its window was brought to the front.");
  else await present("Sillbook is already running", shown.address, open);
}

async function present(words: string, address: string, open: boolean): Promise<void> {
  const opened = open && (await openBrowser(address));
  console.log(`${words}: ${address}`);
  if (!opened) console.log("Open this address in a browser on this machine; it works once, for ten minutes.");
}

import { spawn } from "node:child_process";

/** A program and its arguments. */
export type BrowserCommand = readonly [command: string, ...args: string[]];

/**
 * How the default browser is opened on a machine, or undefined where there is none to open: a Linux machine without a
 * display has at most a text browser, which would take over the terminal.
 */
export function browserCommand(
  address: string,
  { platform, env }: { platform: NodeJS.Platform; env: NodeJS.ProcessEnv },
): BrowserCommand | undefined {
  if (platform === "darwin") return ["open", address];
  if (platform === "win32") return ["rundll32", "url.dll,FileProtocolHandler", address];
  if (env.BROWSER) return [env.BROWSER, address];
  return env.DISPLAY || env.WAYLAND_DISPLAY ? ["xdg-open", address] : undefined;
}

/** Opens the default browser. @returns whether one could be started. */
export function openBrowser(address: string): Promise<boolean> {
  const command = browserCommand(address, { platform: process.platform, env: process.env });
  if (!command) return Promise.resolve(false);
  const [program, ...args] = command;
  return new Promise((done) => {
    const child = spawn(program, args, { stdio: "ignore", detached: true });
    child.on("error", () => done(false));
    child.on("spawn", () => {
      child.unref();
      done(true);
    });
  });
}

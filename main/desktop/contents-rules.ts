import type { WebContents } from "electron";
import { isAppAddress } from "./app-address.ts";

/** A page stays on our own addresses, in every frame, and opens no window of its own. */
export function applyContentsRules(contents: Pick<WebContents, "on" | "setWindowOpenHandler">): void {
  const stay = (event: { readonly url: string; preventDefault(): void }): void => {
    if (!isAppAddress(event.url)) event.preventDefault();
  };
  contents.on("will-navigate", stay);
  contents.on("will-redirect", stay);
  contents.on("will-frame-navigate", stay);
  contents.on("will-attach-webview", (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: "deny" }));
}

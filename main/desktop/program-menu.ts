import type { MenuItemConstructorOptions } from "electron";

/** The menu bar, in our own words. Screens are reached inside the program; a shell knows none of them. */
export function programMenu({
  print,
  isPackaged,
}: {
  print(): void;
  isPackaged: boolean;
}): MenuItemConstructorOptions[] {
  return [
    {
      label: "&Sillbook",
      submenu: [
        { label: "&Print this page", accelerator: "CmdOrCtrl+P", click: () => print() },
        { type: "separator" },
        { label: "&Close Sillbook", role: "quit" },
      ],
    },
    {
      label: "&Edit",
      submenu: [
        { label: "&Undo typing", role: "undo" },
        { label: "&Redo typing", role: "redo" },
        { type: "separator" },
        { label: "Cu&t", role: "cut" },
        { label: "&Copy", role: "copy" },
        { label: "&Paste", role: "paste" },
        { label: "Select &all", role: "selectAll" },
      ],
    },
    {
      label: "&View",
      submenu: [
        { label: "&Larger text", role: "zoomIn" },
        { label: "&Smaller text", role: "zoomOut" },
        { label: "&Usual text size", role: "resetZoom" },
        { type: "separator" },
        { label: "&Full screen", role: "togglefullscreen" },
        ...(isPackaged ? [] : [{ label: "Developer &tools", role: "toggleDevTools" as const }]),
      ],
    },
  ];
}

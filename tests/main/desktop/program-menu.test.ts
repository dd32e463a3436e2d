import { expect, test } from "vitest";
import { programMenu } from "../../../main/desktop/program-menu.ts";

type Item = { label?: string; role?: string; click?: () => void; submenu?: Item[] };
const items = (isPackaged: boolean, print = (): void => {}): Item[] =>
  (programMenu({ print, isPackaged }) as Item[]).flatMap((menu) => [menu, ...(menu.submenu ?? [])]);

test("every item has words of our own", () => {
  for (const item of items(false)) if (!("type" in item)) expect(item.label).toMatch(/\S/);
});

test("the access keys of a menu are its own", () => {
  for (const { label, submenu = [] } of programMenu({ print: () => {}, isPackaged: false }) as Item[]) {
    const keys = submenu.flatMap((item) => /&(.)/.exec(item.label ?? "")?.[1]?.toLowerCase() ?? []);
    expect(new Set(keys).size, label).toBe(keys.length);
  }
});

test("a packaged program has no developer tools in its menu", () => {
  const roles = (isPackaged: boolean) => items(isPackaged).map((item) => item.role);
  expect(roles(false)).toContain("toggleDevTools");
  expect(roles(true)).not.toContain("toggleDevTools");
});

test("printing prints this page", () => {
  let printed = 0;
  items(true, () => {
    printed += 1;
  })
    .find((item) => item.label?.includes("Print"))
    ?.click?.();
  expect(printed).toBe(1);
});

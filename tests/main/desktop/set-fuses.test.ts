import { readFileSync } from "node:fs";
import { join } from "node:path";
import { FuseV1Options } from "@electron/fuses";
import { expect, test } from "vitest";
import { projectRoot } from "../../../main/command-line/project-root.mjs";
import { fuses } from "../../../main/desktop/set-fuses.mjs";

test("every fuse there is has been decided", () => {
  const known = Object.values(FuseV1Options).filter((value) => typeof value === "number");
  expect(known.length).toBeGreaterThanOrEqual(8);
  for (const fuse of known) expect(fuses[fuse], FuseV1Options[fuse]).toBeTypeOf("boolean");
  expect(fuses.strictlyRequireAllFuses).toBe(true);
});

test("the packaged binary runs nothing but the packaged program", () => {
  expect(fuses).toMatchObject({
    [FuseV1Options.RunAsNode]: false,
    [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: false,
    [FuseV1Options.EnableNodeCliInspectArguments]: false,
    [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: true,
    [FuseV1Options.OnlyLoadAppFromAsar]: true,
    [FuseV1Options.EnableCookieEncryption]: true,
    [FuseV1Options.GrantFileProtocolExtraPrivileges]: false,
  });
});

test("the packaging sets them", () => {
  const configuration = readFileSync(join(projectRoot, "electron-builder.yml"), "utf8");
  expect(configuration).toMatch(/^afterPack: main\/desktop\/set-fuses\.mjs$/m);
  expect(configuration).toMatch(/^asar: true$/m);
});

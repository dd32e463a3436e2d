import fs from "node:fs";
import path from "node:path";
import { type ESTree, parseSync, Visitor } from "vite";
import { describe, expect, test } from "vitest";

const root = path.resolve(import.meta.dirname, "..");
const layers = ["main", "renderer", "shared-lib"] as const;
const longestFile = 400;
const longestFunction = 60;
/** A component's lines are mostly markup, which is read down the page and hides no branches. */
const longestComponent = 90;

interface SourceFile {
  /** As in "main/data/store.ts". */
  readonly name: string;
  readonly text: string;
  readonly imports: readonly string[];
  readonly functions: readonly { readonly name: string; readonly lines: number }[];
}

function filesIn(folder: string): string[] {
  return fs.readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const file = path.join(folder, entry.name);
    if (entry.isDirectory()) return filesIn(file);
    return /\.(ts|tsx|mjs)$/.test(entry.name) ? [file] : [];
  });
}

function readSource(file: string): SourceFile {
  const text = fs.readFileSync(file, "utf8");
  const { program, module, comments, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file} cannot be parsed: ${errors[0]?.message}`);
  const imports = [
    ...module.staticImports.map((found) => found.moduleRequest.value),
    ...module.staticExports.flatMap((found) => found.entries.map((entry) => entry.moduleRequest?.value)),
    ...[...text.matchAll(/\bimport\(\s*["']([^"']+)["']/g)].map((match) => match[1]),
  ].filter((name) => name !== undefined);
  return {
    name: path.relative(root, file).replaceAll("\\", "/"),
    text: withoutComments(text, comments),
    imports,
    functions: functionsOf(program, text),
  };
}

/** Comments may quote what code may not do; they become blanks, so that lines and columns stay. */
function withoutComments(text: string, comments: readonly { start: number; end: number }[]): string {
  return comments.reduce(
    (rest, { start, end }) =>
      rest.slice(0, start) + rest.slice(start, end).replace(/[^\n]/g, " ") + rest.slice(end),
    text,
  );
}

function functionsOf(program: ESTree.Program, text: string): { name: string; lines: number }[] {
  const lineOf = (offset: number): number => text.slice(0, offset).split("\n").length;
  const found: { name: string; lines: number }[] = [];
  const measure = (node: { start: number; end: number }): void => {
    const start = lineOf(node.start);
    found.push({ name: `line ${start}`, lines: lineOf(node.end) - start + 1 });
  };
  new Visitor({
    FunctionDeclaration: measure,
    FunctionExpression: measure,
    ArrowFunctionExpression: measure,
  }).visit(program);
  return found;
}

const sources = layers.flatMap((layer) => filesIn(path.join(root, layer))).map(readSource);

/** "main/data/worker.ts" importing "../x.ts" is "main/x.ts"; an alias is resolved; a package stays as it is named. */
function targetOf(source: SourceFile, name: string): string {
  if (name.startsWith("#shared-lib/")) return name.slice(1);
  if (!name.startsWith(".")) return name;
  return path.posix.normalize(path.posix.join(path.posix.dirname(source.name), name));
}

function breaches(inFolder: string, allowed: (target: string, source: SourceFile) => boolean): string[] {
  return sources
    .filter((source) => source.name.startsWith(inFolder))
    .flatMap((source) =>
      source.imports
        .map((name) => targetOf(source, name))
        .filter((target) => !allowed(target, source))
        .map((target) => `${source.name} imports ${target}`),
    );
}

const isPackage = (target: string): boolean =>
  !layers.some((layer) => target.startsWith(`${layer}/`)) && target !== "package.json";

/** Desk logs and follows callouts with the callout page's own dialogs; Find previews notes as their page shows them. */
const partsOf: Readonly<Record<string, readonly string[]>> = { desk: ["callout"], find: ["fault-note"] };

describe("who may import whom", () => {
  test("shared-lib imports only itself and zod", () => {
    expect(breaches("shared-lib/", (target) => target.startsWith("shared-lib/") || target === "zod")).toEqual(
      [],
    );
  });

  test("renderer imports itself, shared-lib and packages, but neither Node nor Electron nor main", () => {
    const allowed = (target: string): boolean =>
      target.startsWith("renderer/") ||
      target.startsWith("shared-lib/") ||
      (isPackage(target) && !target.startsWith("node:") && target !== "electron");
    expect(breaches("renderer/", allowed)).toEqual([]);
  });

  test("main imports itself, shared-lib and packages, but neither React nor the renderer", () => {
    const allowed = (target: string): boolean =>
      target.startsWith("main/") ||
      target.startsWith("shared-lib/") ||
      target === "package.json" ||
      (isPackage(target) && !/^react|^@tanstack/.test(target));
    expect(breaches("main/", allowed)).toEqual([]);
  });

  test("electron is imported only in main/desktop", () => {
    const importers = sources
      .filter((source) => source.imports.includes("electron"))
      .map((source) => source.name);
    expect(importers.length).toBeGreaterThan(0);
    expect(importers.filter((name) => !name.startsWith("main/desktop/"))).toEqual([]);
  });

  test("the data side knows no door", () => {
    expect(
      breaches("main/data/", (target) => !/^main\/(desktop|local-web|command-line)\//.test(target)),
    ).toEqual([]);
  });

  test("a screen uses another feature's files only where one is part of the other, or by its named parts", () => {
    const featureOf = (name: string): string | undefined => /^renderer\/features\/([^/]+)\//.exec(name)?.[1];
    const allowed = (target: string, source: SourceFile): boolean => {
      const [from, other] = [featureOf(source.name), featureOf(target)];
      const isPart = other !== undefined && from !== undefined && partsOf[from]?.includes(other);
      return (
        other === undefined || other === from || isPart || /-(link|strip|panel|parts?)\.tsx?$/.test(target)
      );
    };
    expect(breaches("renderer/features/", (target, source) => allowed(target, source) === true)).toEqual([]);
  });

  test("what runs before the install imports nothing but Node", () => {
    const firstFiles = ["start.mjs", "test.mjs", "ask.mjs", "bench.mjs", "package.mjs"];
    const allowed = (target: string): boolean =>
      target.startsWith("node:") || (target.startsWith("main/command-line/") && target.endsWith(".mjs"));
    const found = sources.filter(
      (source) =>
        firstFiles.includes(path.basename(source.name)) && source.name.startsWith("main/command-line/"),
    );
    expect(found).toHaveLength(firstFiles.length);
    for (const source of found) expect(breaches(source.name, allowed)).toEqual([]);
  });
});

describe("how the parts talk", () => {
  test("only the shell client talks to a shell", () => {
    const talkers = sources
      .filter(
        (source) =>
          source.name.startsWith("renderer/") &&
          /window\.sillbook|\bfetch\(|new EventSource|new WebSocket|XMLHttpRequest/.test(source.text),
      )
      .map((source) => source.name);
    expect(talkers).toEqual(["renderer/shell-client.ts"]);
  });

  test("there are two channels between main and the page, and no other", () => {
    const literal = /["'`]sillbook:[^"'`]+["'`]/g;
    const channels = sources
      .find((source) => source.name === "main/desktop/channels.ts")
      ?.text.match(literal);
    expect(channels).toHaveLength(2);
    const calls = sources.flatMap((source) =>
      [
        ...source.text.matchAll(
          /\b(?:ipcMain|ipcRenderer|webContents)\.(?:handle|handleOnce|on|once|off|send|invoke|sendSync|postMessage)\(\s*([^,)\s]+)/g,
        ),
      ].map((match) => match[1]),
    );
    const onChannels = calls.filter((argument) => !/^["'](?!sillbook)/.test(argument ?? ""));
    expect(
      onChannels.filter(
        (argument) => !["requestChannel", "eventChannel", "channel"].includes(argument ?? ""),
      ),
    ).toEqual([]);
  });

  test("SQL stands only in *.sql.ts", () => {
    const statement =
      /["'`]\s*(?:SELECT\s|INSERT INTO\s|UPDATE\s+\w+\s+SET|DELETE FROM\s|CREATE TABLE|PRAGMA\s)/;
    const found = sources
      .filter((source) => !source.name.endsWith(".sql.ts") && statement.test(source.text))
      .map((source) => source.name);
    expect(found).toEqual([]);
  });
});

describe("size", () => {
  test(`no file is longer than ${longestFile} lines`, () => {
    const long = sources
      .map((source) => ({ name: source.name, lines: source.text.split("\n").length }))
      .filter(({ lines }) => lines > longestFile);
    expect(long).toEqual([]);
  });

  test(`no function is longer than ${longestFunction} lines, no component than ${longestComponent}`, () => {
    const long = sources.flatMap((source) =>
      source.functions
        .filter(({ lines }) => lines > (source.name.endsWith(".tsx") ? longestComponent : longestFunction))
        .map(({ name, lines }) => `${source.name} ${name}: ${lines} lines`),
    );
    expect(long).toEqual([]);
  });
});

test("the top level holds only what was agreed", () => {
  const agreed =
    /^(README\.md|DEVELOPERS\.md|package(-lock)?\.json|electron\.vite\.config\.ts|main|renderer|shared-lib|tests|tsconfig\.json|vitest\.config\.ts|biome\.json|electron-builder\.yml|LICENSE|\..*|node_modules|out|dist)$/;
  expect(fs.readdirSync(root).filter((name) => !agreed.test(name))).toEqual([]);
});

import { randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import { extname, resolve, sep } from "node:path";
import { fileHeaders } from "./content-security-policy.ts";

export interface BundleFile {
  readonly status: 200 | 204 | 404;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
}

const noncePlaceholder = "__CSP_NONCE__";

const contentTypes: Readonly<Record<string, string>> = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".woff2": "font/woff2",
};

/**
 * Reads one file of the built screens, with the headers both shells send. A page gets a nonce of its own each time.
 * @param folder absolute path of the built screens; nothing outside it is ever read
 * @param pathname of the address, still percent-encoded
 */
export async function readBundleFile(folder: string, pathname: string): Promise<BundleFile> {
  const nonce = randomBytes(16).toString("base64");
  const headers = fileHeaders(nonce);
  // Browsers ask for it unasked; the page names its own icon.
  if (pathname === "/favicon.ico") return { status: 204, headers, body: Buffer.alloc(0) };
  const file = locateBundleFile(folder, pathname);
  const type = file && contentTypes[extname(file)];
  const bytes = type ? await readIfThere(file) : undefined;
  if (!type || !bytes) {
    return {
      status: 404,
      headers: { ...headers, "Content-Type": "text/plain; charset=utf-8" },
      body: notFound,
    };
  }
  const isPage = extname(file) === ".html";
  return {
    status: 200,
    headers: {
      ...headers,
      "Content-Type": type,
      // The names of assets carry a hash of their contents; the page itself carries this response's nonce.
      "Cache-Control": isPage ? "no-store" : "private, max-age=3600",
    },
    body: isPage ? Buffer.from(bytes.toString("utf8").replaceAll(noncePlaceholder, nonce)) : bytes,
  };
}

const notFound = Buffer.from("There is nothing at this address.\n");

/** The file behind a path, or undefined where the path is malformed or leads outside the folder. */
export function locateBundleFile(folder: string, pathname: string): string | undefined {
  let decoded: string;
  try {
    decoded = decodeURIComponent(pathname);
  } catch {
    return undefined;
  }
  // A backslash is a separator on Windows only, a colon names a drive or a stream there: refused everywhere alike.
  if (!decoded.startsWith("/") || /[\\\0:]/.test(decoded)) return undefined;
  const root = resolve(folder);
  const file = resolve(root, `.${decoded === "/" ? "/index.html" : decoded}`);
  return file.startsWith(root + sep) ? file : undefined;
}

async function readIfThere(file: string): Promise<Buffer | undefined> {
  try {
    return await readFile(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOENT" || code === "EISDIR" || code === "ENOTDIR") return undefined;
    throw error;
  }
}

const inputOutputError = 29;

/**
 * The error numbers of the WebAssembly system interface (WASI preview 1, `errno`), which is what the C library inside
 * sql.js expects. They differ from the numbers of the machine the program runs on.
 */
const errorNumbers: Readonly<Record<string, number>> = {
  EACCES: 2,
  EAGAIN: 6,
  EBADF: 8,
  EBUSY: 10,
  EDQUOT: 19,
  EEXIST: 20,
  EFBIG: 22,
  EINTR: 27,
  EINVAL: 28,
  EIO: inputOutputError,
  EISDIR: 31,
  ELOOP: 32,
  EMFILE: 33,
  ENAMETOOLONG: 37,
  ENFILE: 41,
  ENOENT: 44,
  ENOMEM: 48,
  ENOSPC: 51,
  ENOTDIR: 54,
  EPERM: 63,
  EROFS: 69,
};

/** The code ("ENOSPC") of an error of `node:fs`; a failure without a code is treated as an input/output error. */
export function systemErrorCode(error: unknown): string {
  if (typeof error === "object" && error !== null && "code" in error && typeof error.code === "string") {
    return error.code;
  }
  return "EIO";
}

/** A call to the operating system failed; anything else (a missing module, a defect) is not the disk's fault. */
export function isSystemError(error: unknown): boolean {
  return typeof error === "object" && error !== null && "syscall" in error;
}

/** The number SQLite's C library understands. An unknown code becomes EIO, never success. */
export function systemErrorNumber(code: string): number {
  // Over its quota or over a size limit means the same to a person as a full disk, and SQLite only knows ENOSPC.
  if (code === "EDQUOT" || code === "EFBIG") return systemErrorNumber("ENOSPC");
  return errorNumbers[code] ?? inputOutputError;
}

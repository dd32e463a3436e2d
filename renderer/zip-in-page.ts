import { type Unzipped, unzipSync, type Zippable, zipSync } from "fflate";

type Done<Result> = (error: Error | null, result: Result) => void;

/**
 * What the workbook libraries take from fflate, without its workers: fflate starts them from a `blob:` address, and the
 * content security policy allows no script from there. electron.vite.config.ts puts this in fflate's place for them.
 */
export function zip(files: Zippable, done: Done<Uint8Array>): void {
  let result: Uint8Array;
  try {
    result = zipSync(files);
  } catch (error) {
    done(error as Error, new Uint8Array());
    return;
  }
  done(null, result);
}

/** As `unzip` of fflate, in this thread. */
export function unzip(bytes: Uint8Array, done: Done<Unzipped>): void {
  let result: Unzipped;
  try {
    result = unzipSync(bytes);
  } catch (error) {
    done(error as Error, {});
    return;
  }
  done(null, result);
}

import { parseArgs } from "node:util";

export const startUsage = `Usage: npm start -- [options]
  --demo                open the demonstration company, in a data folder of its own
  --data <folder>       use this data folder instead of the usual place
  --shell desktop|web   a window of its own, or a page in your browser (default: a window where one can open)
  --port <number>       port of the page in your browser (default: a free one)
  --no-open             do not open the browser; the address is printed`;

/**
 * @typedef {object} StartOptions
 * @property {boolean} demo
 * @property {string | undefined} data
 * @property {"desktop" | "web" | undefined} shell
 * @property {number | undefined} port
 * @property {boolean} open
 */

/**
 * @param {readonly string[]} args
 * @returns {{ options: StartOptions } | { problem: string }}
 */
export function readStartOptions(args) {
  let values;
  try {
    ({ values } = parseArgs({
      args: [...args],
      options: {
        demo: { type: "boolean" },
        data: { type: "string" },
        shell: { type: "string" },
        port: { type: "string" },
        "no-open": { type: "boolean" },
      },
    }));
  } catch (error) {
    return { problem: /** @type {Error} */ (error).message };
  }
  const { shell, port, data } = values;
  if (data === "") return { problem: "--data needs the name of a folder." };
  if (shell !== undefined && shell !== "desktop" && shell !== "web") {
    return { problem: `--shell is "desktop" or "web", not "${shell}".` };
  }
  if (port !== undefined && !(/^\d{1,5}$/.test(port) && Number(port) <= 65535)) {
    return { problem: `--port is a number from 0 to 65535, not "${port}".` };
  }
  return {
    options: {
      demo: values.demo === true,
      data,
      shell,
      port: port === undefined ? undefined : Number(port),
      open: values["no-open"] !== true,
    },
  };
}

/**
 * The same options in the form both doors read.
 * @param {StartOptions} options
 * @returns {string[]}
 */
export function doorArguments({ demo, data, port, open }) {
  return [
    ...(demo ? ["--demo"] : []),
    ...(data === undefined ? [] : ["--data", data]),
    ...(port === undefined ? [] : ["--port", String(port)]),
    ...(open ? [] : ["--no-open"]),
  ];
}

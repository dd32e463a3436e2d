/**
 * Refuses values that JSON does not carry unchanged. Between processes Electron clones Map, Date and bytes, a browser
 * does not get them over HTTP: the contract allows neither. Also put into the page as source text, so it stands alone.
 * @param {unknown} value
 * @param {string} [path]
 */
export function refuseOtherThanJson(value, path = "value") {
  if (value === null || typeof value === "string" || typeof value === "boolean") return;
  if (typeof value === "number" && Number.isFinite(value)) return;
  if (Array.isArray(value)) {
    for (const [index, item] of value.entries()) refuseOtherThanJson(item, `${path}[${index}]`);
    return;
  }
  if (typeof value === "object") {
    const prototype = Object.getPrototypeOf(value);
    // Objects of another realm (the page's, seen from the program) are plain too.
    const isPlain = prototype === null || Object.getPrototypeOf(prototype) === null;
    if (isPlain && Object.prototype.toString.call(value) === "[object Object]") {
      for (const [name, member] of Object.entries(value)) {
        // A member that is undefined is left out by JSON, which means the same.
        if (member !== undefined) refuseOtherThanJson(member, `${path}.${name}`);
      }
      return;
    }
  }
  throw new TypeError(
    `Not JSON, refused by the stand-in for Electron: ${path} (${Object.prototype.toString.call(value)})`,
  );
}

/**
 * Makes every use of what the stand-in does not implement an error, so that the desktop door cannot quietly depend on it.
 * @template {object} Target
 * @param {string} name
 * @param {Target} target
 * @returns {Target}
 */
export function refuseTheRest(name, target) {
  return new Proxy(target, {
    get(object, property) {
      // Promises are told from other objects by looking for `then`.
      if (typeof property === "symbol" || property === "then" || property in object) {
        const value = Reflect.get(object, property);
        return typeof value === "function" && !/^class\s/.test(String(value)) ? value.bind(object) : value;
      }
      throw new Error(`The stand-in for Electron does not implement ${name}.${property}`);
    },
    set(_object, property) {
      throw new Error(`The stand-in for Electron does not let ${name}.${String(property)} be set`);
    },
  });
}

/**
 * @param {string} what
 * @param {readonly string[]} known
 * @param {Iterable<string>} given
 */
export function refuseUnknown(what, known, given) {
  for (const name of given) {
    if (!known.includes(name))
      throw new Error(`The stand-in for Electron does not implement ${what} "${name}"`);
  }
}

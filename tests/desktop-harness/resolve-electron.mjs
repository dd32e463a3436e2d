const standIn = new URL("./stand-in/electron.mjs", import.meta.url).href;

/** @type {import("node:module").ResolveHook} */
export async function resolve(specifier, context, nextResolve) {
  if (specifier === "electron") return { url: standIn, format: "module", shortCircuit: true };
  return nextResolve(specifier, context);
}

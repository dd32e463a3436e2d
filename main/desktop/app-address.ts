/** The scheme and host of the program's own pages. */
export const appScheme = "app";
export const appHost = "bundle";
export const appOrigin = `${appScheme}://${appHost}`;
export const startAddress = `${appOrigin}/`;

/** Whether an address is one of our own pages; parsed, as text that merely begins like one proves nothing. */
export function isAppAddress(address: string): boolean {
  const parsed = parseAddress(address);
  return parsed?.protocol === `${appScheme}:` && parsed.host === appHost && parsed.username === "";
}

/** Whether an address may be handed to the operating system: a web page or a mail, never a file or a program. */
export function isExternalAddress(address: string): boolean {
  const protocol = parseAddress(address)?.protocol;
  return protocol === "https:" || protocol === "mailto:";
}

function parseAddress(address: string): URL | undefined {
  try {
    return new URL(address);
  } catch {
    return undefined;
  }
}

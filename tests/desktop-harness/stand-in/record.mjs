/**
 * What the desktop door did with the stand-in, for the tests to read.
 * @type {{
 *   sandboxEnabled: boolean,
 *   privileges: unknown[],
 *   windowOptions: object[],
 *   menu: unknown,
 *   openedAddresses: string[],
 *   printed: object[],
 *   refusedNavigations: string[],
 *   refusedWindows: string[],
 *   cancelledRequests: string[],
 *   shownCount: number,
 *   focusedCount: number,
 * }}
 */
export const record = {
  sandboxEnabled: false,
  privileges: [],
  windowOptions: [],
  menu: null,
  openedAddresses: [],
  printed: [],
  refusedNavigations: [],
  refusedWindows: [],
  cancelledRequests: [],
  shownCount: 0,
  focusedCount: 0,
};

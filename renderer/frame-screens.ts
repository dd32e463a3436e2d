/** The words of the shaft, top to bottom, with the letter that follows G to go there. */
export const frameScreens = [
  { path: "/desk", word: "Desk", letter: "D" },
  { path: "/find", word: "Find", letter: "F" },
  { path: "/lifts", word: "Lifts", letter: "L" },
  { path: "/checks", word: "Checks", letter: "C" },
  { path: "/bench", word: "Bench", letter: "B" },
  { path: "/review", word: "Review", letter: "R" },
  { path: "/settings", word: "Settings", letter: "S" },
] as const;

export type ScreenPath = (typeof frameScreens)[number]["path"];

const screensOfRecords: { readonly [first: string]: ScreenPath } = {
  callout: "/desk",
  note: "/find",
  site: "/lifts",
  lift: "/lifts",
  visit: "/lifts",
  "bring-in": "/settings",
};

/** The screen a path belongs to: a lift stands at the level of Lifts. */
export function screenOf(pathname: string): ScreenPath | undefined {
  const first = pathname.split("/")[1] ?? "";
  return frameScreens.find((one) => one.path === `/${first}`)?.path ?? screensOfRecords[first];
}

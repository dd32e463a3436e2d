/** Where an arrow, Page, Home or End key leads in a list of `count` rows; undefined when the key does not move. */
export function movedIndex(key: string, current: number, count: number, page: number): number | undefined {
  if (count === 0) return undefined;
  const within = (index: number) => Math.min(count - 1, Math.max(0, index));
  switch (key) {
    case "ArrowDown":
      return within(current + 1);
    case "ArrowUp":
      return within(current < 0 ? count - 1 : current - 1);
    case "PageDown":
      return within(current + page);
    case "PageUp":
      return within(current - page);
    case "Home":
      return 0;
    case "End":
      return count - 1;
    default:
      return undefined;
  }
}

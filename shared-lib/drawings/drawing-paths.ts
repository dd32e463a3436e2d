/** A rectangle in pixels, y downwards. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A tenth of a pixel is finer than any pen here; longer numbers only make the picture's text heavy. */
export function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}

export function boxesOverlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Area in square pixels that two boxes share. */
export function sharedArea(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

export function grownBox(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, width: box.width + 2 * by, height: box.height + 2 * by };
}

export function boxCentre(box: Box): Point {
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

export function unionBox(a: Box, b: Box): Box {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  };
}

/** The oblique stroke that ends a dimension line, at 45 degrees, rising to the right. */
export function tickPath(x: number, y: number, size = 9): string {
  const half = size / 2;
  return `M${tenth(x - half)} ${tenth(y + half)}L${tenth(x + half)} ${tenth(y - half)}`;
}

/** Ticks of a dimension shorter than a tick are made smaller, so that two do not run into one blot. */
export function tickSizeFor(length: number): number {
  return Math.min(9, Math.max(4.5, length));
}

/** A line through points, straight. */
export function linePath(points: readonly Point[]): string {
  return points
    .map((point, index) => `${index === 0 ? "M" : "L"}${tenth(point.x)} ${tenth(point.y)}`)
    .join("");
}

/** A checker's cloud round a box: arcs of about `bump` pixels on every side, bulging outwards. */
export function cloudPath(box: Box, bump = 12): string {
  const across = Math.max(2, Math.round(box.width / bump));
  const down = Math.max(2, Math.round(box.height / bump));
  const stepX = box.width / across;
  const stepY = box.height / down;
  const arcs: string[] = [`M${tenth(box.x)} ${tenth(box.y)}`];
  const arcTo = (x: number, y: number, step: number) => {
    const radius = tenth(step * 0.54);
    arcs.push(`A${radius} ${radius} 0 0 1 ${tenth(x)} ${tenth(y)}`);
  };
  for (let i = 1; i <= across; i++) arcTo(box.x + i * stepX, box.y, stepX);
  for (let i = 1; i <= down; i++) arcTo(box.x + box.width, box.y + i * stepY, stepY);
  for (let i = across - 1; i >= 0; i--) arcTo(box.x + i * stepX, box.y + box.height, stepX);
  for (let i = down - 1; i >= 0; i--) arcTo(box.x, box.y + i * stepY, stepY);
  return `${arcs.join("")}Z`;
}

/** The numbered triangle of a mark: 26 x 22 at a label size of 14, growing with its number. */
export function triangleSize(textSize: number): { readonly width: number; readonly height: number } {
  return { width: (26 * textSize) / 14, height: (22 * textSize) / 14 };
}

export function trianglePath(x: number, y: number, textSize: number): string {
  const { width, height } = triangleSize(textSize);
  return `M${tenth(x + width / 2)} ${tenth(y)}L${tenth(x + width)} ${tenth(y + height)}H${tenth(x)}Z`;
}

/** A break line (thin, straight with zigzags) from left to right at height y. */
export function breakLinePath(left: number, right: number, y: number): string {
  const width = right - left;
  const zigzags = width > 90 ? [left + width * 0.28, left + width * 0.72] : [left + width / 2];
  const parts = zigzags.map(
    (x) =>
      `L${tenth(x - 4)} ${tenth(y)}L${tenth(x - 1.5)} ${tenth(y - 6)}L${tenth(x + 1.5)} ${tenth(y + 6)}L${tenth(x + 4)} ${tenth(y)}`,
  );
  return `M${tenth(left)} ${tenth(y)}${parts.join("")}L${tenth(right)} ${tenth(y)}`;
}

/** A spring buffer standing between two heights: base plate above, coils below it. */
export function springPath(centre: number, top: number, bottom: number, width = 17): string {
  const half = width / 2;
  const coils = 5;
  const start = top + Math.min(2, (bottom - top) / 8);
  const step = (bottom - start) / (coils + 1);
  let path = `M${tenth(centre - half)} ${tenth(top)}H${tenth(centre + half)}M${tenth(centre)} ${tenth(top)}`;
  for (let i = 1; i <= coils; i++) {
    path += `L${tenth(centre + (i % 2 === 1 ? 5.5 : -5.5))} ${tenth(start + i * step)}`;
  }
  return `${path}L${tenth(centre)} ${tenth(bottom)}`;
}

/** Corner and size of the box a cloud is drawn round, in the drawing's units. */
export interface CloudBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The checker's cloud: arcs that bulge outwards, one after the other round the box. Each arc is about `bump` long, so
 * a cloud looks the same whatever it surrounds. Returns the `d` of a path with class "pen-pencil".
 */
export function cloudPath({ x, y, width, height }: CloudBox, bump = 11): string {
  const across = Math.max(2, Math.round(width / bump));
  const down = Math.max(2, Math.round(height / bump));
  const corners: [number, number][] = [];
  for (let i = 0; i < across; i += 1) corners.push([x + (width * i) / across, y]);
  for (let i = 0; i < down; i += 1) corners.push([x + width, y + (height * i) / down]);
  for (let i = across; i > 0; i -= 1) corners.push([x + (width * i) / across, y + height]);
  for (let i = down; i > 0; i -= 1) corners.push([x, y + (height * i) / down]);
  const round = (value: number) => Number(value.toFixed(1));
  const arcs = corners.map(([fromX, fromY], i) => {
    const [toX, toY] = corners[(i + 1) % corners.length] ?? [x, y];
    const radius = round(Math.hypot(toX - fromX, toY - fromY) * 0.54);
    return `A${radius} ${radius} 0 0 1 ${round(toX)} ${round(toY)}`;
  });
  return `M${round(x)} ${round(y)}${arcs.join("")}Z`;
}

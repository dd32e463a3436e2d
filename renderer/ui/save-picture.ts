import { handOverFile } from "./hand-over-file.ts";

/** What of a computed style makes the picture; the saved file has no style sheet of its own. */
const keptProperties = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "stroke-opacity",
  "opacity",
  "font-family",
  "font-size",
  "font-weight",
  "text-anchor",
  "dominant-baseline",
  "paint-order",
  "font-variant-numeric",
];

/** Hands the picture to the person as an SVG file, in the colours that are on the screen. */
export function savePicture(svg: SVGSVGElement, fileName: string): void {
  const blob = new Blob([pictureText(svg)], { type: "image/svg+xml" });
  handOverFile(blob, `${fileName}.svg`);
}

/** The picture as a file that needs nothing else: styles written out, hatches and ground included. */
export function pictureText(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const patterns = document.querySelector<SVGDefsElement>(".hatch-patterns defs");
  writeStyles(svg, copy);
  if (patterns !== null) {
    const patternCopy = patterns.cloneNode(true) as SVGDefsElement;
    writeStyles(patterns, patternCopy);
    copy.prepend(patternCopy);
  }
  const { width, height } = svg.getBoundingClientRect();
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("width", String(Math.ceil(width)));
  copy.setAttribute("height", String(Math.ceil(height)));
  copy.style.setProperty("background", getComputedStyle(document.body).backgroundColor);
  return new XMLSerializer().serializeToString(copy);
}

function writeStyles(from: Element, to: Element): void {
  const styles = getComputedStyle(from);
  for (const property of keptProperties) {
    to.setAttribute(property, styles.getPropertyValue(property));
  }
  // Where the file is opened the lettering face may be missing: another one must not run into its neighbours.
  if (from instanceof SVGTextElement && from.getComputedTextLength() > 0) {
    to.setAttribute("textLength", from.getComputedTextLength().toFixed(1));
    to.setAttribute("lengthAdjust", "spacingAndGlyphs");
  }
  to.removeAttribute("class");
  to.removeAttribute("style");
  for (const [i, child] of [...from.children].entries()) {
    const twin = to.children[i];
    if (twin !== undefined) writeStyles(child, twin);
  }
}

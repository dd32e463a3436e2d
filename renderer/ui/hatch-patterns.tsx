/** The three hatches of every drawing, once per window: url(#hatch), url(#hatch-soft), url(#hatch-construction). */
export function HatchPatterns() {
  return (
    <svg className="hatch-patterns" aria-hidden="true">
      <defs>
        <pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V5" className="hatch-line" />
        </pattern>
        <pattern
          id="hatch-soft"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V6" className="hatch-line-soft" />
        </pattern>
        <pattern
          id="hatch-construction"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <path d="M0 0V6" className="hatch-line-construction" />
        </pattern>
      </defs>
    </svg>
  );
}

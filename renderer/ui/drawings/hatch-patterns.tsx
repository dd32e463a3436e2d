export interface Hatches {
  readonly cut: string;
  readonly soft: string;
  readonly construction: string;
}

/** `fill` values of this drawing's own hatches; identifiers must differ between drawings on one page. */
export function hatchesOf(id: string): Hatches {
  const clean = id.replace(/[^a-zA-Z0-9_-]/g, "");
  return {
    cut: `url(#${clean}-cut)`,
    soft: `url(#${clean}-soft)`,
    construction: `url(#${clean}-construction)`,
  };
}

/** Hatch at 45 degrees, 5 px apart, for what is cut; wider and softer for ranges; leaning left for uncertainty. */
export function HatchPatterns(props: { readonly id: string }) {
  const clean = props.id.replace(/[^a-zA-Z0-9_-]/g, "");
  return (
    <defs>
      <pattern
        id={`${clean}-cut`}
        width="5"
        height="5"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path d="M0 0V5" stroke="var(--ink)" strokeWidth="0.9" />
      </pattern>
      <pattern
        id={`${clean}-soft`}
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path d="M0 0V6" stroke="var(--edge)" strokeWidth="0.7" />
      </pattern>
      <pattern
        id={`${clean}-construction`}
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(-45)"
      >
        <path d="M0 0V6" stroke="var(--construction)" strokeWidth="0.7" />
      </pattern>
    </defs>
  );
}

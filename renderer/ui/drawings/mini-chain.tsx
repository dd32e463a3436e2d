import type { ChainContact, MiniChainLayout } from "#shared-lib/drawings/mini-chain.ts";
import { miniChainLayout, miniChainSentence } from "#shared-lib/drawings/mini-chain.ts";
import { MeasuredDrawing } from "./measured-drawing.tsx";

/** The safety chain as a line for the bridge strip: a picture, simplified, the arch over the bridged contact. */
export function MiniChain(props: { readonly contacts: readonly ChainContact[] }) {
  return (
    <MeasuredDrawing>
      {(size) => (
        <ChainPicture
          contacts={props.contacts}
          layout={miniChainLayout(props.contacts, size.width, size.textSize)}
        />
      )}
    </MeasuredDrawing>
  );
}

interface ChainProps {
  readonly contacts: readonly ChainContact[];
  readonly layout: MiniChainLayout;
}

export function ChainPicture({ contacts, layout }: ChainProps) {
  const { width, height, lineY } = layout;
  const stops = [
    9,
    ...layout.contacts.flatMap((contact) => [contact.left - 2.5, contact.right + 2.5]),
    width - 9,
  ];
  const line = stops.map((x, index) => (index % 2 === 0 ? `M${x} ${lineY}` : `H${x}`)).join("");
  return (
    <div className="drawing-frame">
      <svg
        className="d"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={miniChainSentence(contacts)}
      >
        <path d={line} />
        <circle className="fillw" cx={6} cy={lineY} r={3} />
        <circle className="fillw" cx={width - 6} cy={lineY} r={3} />
        {layout.contacts.map((contact) => (
          <Contact key={contact.contact.id} {...contact} layout={layout} />
        ))}
      </svg>
    </div>
  );
}

type PlacedContact = MiniChainLayout["contacts"][number];

function Contact({
  contact,
  left,
  right,
  middle,
  layout,
}: PlacedContact & { readonly layout: MiniChainLayout }) {
  const { lineY, wordY } = layout;
  return (
    <>
      {contact.bridged ? (
        <>
          <path d={`M${left} ${lineY - 2}L${right - 2} ${lineY - 9}`} />
          <path
            className="pencil chain-arch"
            d={`M${left} ${lineY - 3}C${left} ${lineY - 32} ${right} ${lineY - 32} ${right} ${lineY - 3}`}
          />
        </>
      ) : (
        <path d={`M${left} ${lineY - 3.5}H${right}`} />
      )}
      <circle className="fillw" cx={left} cy={lineY} r={2.5} />
      <circle className="fillw" cx={right} cy={lineY} r={2.5} />
      <text className={contact.bridged ? "c s" : "c q"} x={middle} y={wordY}>
        {contact.words}
      </text>
    </>
  );
}

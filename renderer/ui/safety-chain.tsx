interface SafetyChainProps {
  readonly contacts: readonly string[];
  readonly bridgedAt: number;
}

const letterWidth = 7.2;
const contactWidth = 22;
const lead = 10;

/** The safety chain as one line of contacts with an arch over the bridged one: a picture, simplified. */
export function SafetyChain({ contacts, bridgedAt }: SafetyChainProps) {
  const widths = contacts.map((words) => Math.max(contactWidth + 2 * lead, words.length * letterWidth + 12));
  const starts = widths.map((_, i) => 8 + widths.slice(0, i).reduce((sum, width) => sum + width, 0));
  const end = 8 + widths.reduce((sum, width) => sum + width, 0);
  return (
    <svg
      className="drawing"
      width={end + 8}
      height="58"
      viewBox={`0 0 ${end + 8} 58`}
      role="img"
      aria-label={`Safety chain, simplified: bridge across ${contacts[bridgedAt] ?? "a contact"}`}
    >
      <circle cx="4" cy="30" r="3" />
      {contacts.map((words, i) => (
        <Contact
          // biome-ignore lint/suspicious/noArrayIndexKey: the order of the chain is its identity.
          key={i}
          words={words}
          from={starts[i] ?? 0}
          width={widths[i] ?? 0}
          bridged={i === bridgedAt}
        />
      ))}
      <circle cx={end + 4} cy="30" r="3" />
    </svg>
  );
}

interface ContactProps {
  readonly words: string;
  readonly from: number;
  readonly width: number;
  readonly bridged: boolean;
}

function Contact({ words, from, width, bridged }: ContactProps) {
  const middle = from + width / 2;
  const left = middle - contactWidth / 2;
  const right = middle + contactWidth / 2;
  return (
    <g>
      <path d={`M${from} 30H${left - 2.5}M${right + 2.5} 30H${from + width}`} />
      <circle cx={left} cy="30" r="2.5" />
      <circle cx={right} cy="30" r="2.5" />
      {bridged ? (
        <>
          <path d={`M${left + 2} 28.5L${right - 3} 20`} />
          <path className="pen-pencil bridge-arch" d={`M${left} 26.5C${left} 2 ${right} 2 ${right} 26.5`} />
        </>
      ) : (
        <path d={`M${left + 1} 26.6H${right - 1}`} />
      )}
      <text
        className={bridged ? "letter-pencil letter-centre" : "letter-soft letter-centre"}
        x={middle}
        y="52"
      >
        {words}
      </text>
    </g>
  );
}

/**
 * Picks a known record by a few letters, or takes the words as a new one: rows large enough for a glove.
 *
 * With nothing typed the likeliest are offered at once, so that a known part costs one tap.
 */
import { useId } from "preact/hooks";
import "./RecordPick.css";

export type Offer = { id: string; name: string; note?: string };
export type Picked = { id: string | null; text: string };

type Props = {
  label: string;
  offers: readonly Offer[];
  value: Picked;
  onValue: (value: Picked) => void;
  hint?: string;
  /** What taking the words as they are makes ("a new part"); without it only known records can be picked. */
  makes?: string;
  /** How many are offered at once. */
  show?: number;
};

export function RecordPick({ label, offers, value, onValue, hint, makes, show = 4 }: Props) {
  const id = useId();
  const picked = pickedFrom(offers, value);
  if (picked) return <Chosen label={label} offer={picked} onChange={() => onValue({ id: null, text: "" })} />;
  const found = matching(offers, value.text).slice(0, show);
  const isNew = makes !== undefined && value.text.trim() !== "";
  return (
    <div class="field">
      <label class="label" for={id}>
        {label}
      </label>
      <input
        id={id}
        class="input"
        value={value.text}
        maxLength={120}
        autocomplete="off"
        aria-describedby={`${id}-about`}
        onInput={(event) => onValue({ id: null, text: event.currentTarget.value })}
      />
      {found.length > 0 && <Offers found={found} onPick={(offer) => onValue({ id: offer.id, text: offer.name })} />}
      <p class="hint" id={`${id}-about`} aria-live="polite">
        {isNew ? `“${value.text.trim()}” will be ${makes}.` : hint}
      </p>
    </div>
  );
}

/** A record can be picked that is not offered any more, such as a part that was sold. */
function pickedFrom(offers: readonly Offer[], { id, text }: Picked): Offer | null {
  return id === null ? null : (offers.find((offer) => offer.id === id) ?? { id, name: text });
}

function Chosen({ label, offer, onChange }: { label: string; offer: Offer; onChange: () => void }) {
  return (
    <div class="field">
      <span class="label">{label}</span>
      <div class="picked">
        <span class="picked-name">
          <strong>{offer.name}</strong>
          {offer.note && <span class="small quiet">{offer.note}</span>}
        </span>
        <button type="button" class="button plain" onClick={onChange}>
          Change
        </button>
      </div>
    </div>
  );
}

function Offers({ found, onPick }: { found: readonly Offer[]; onPick: (offer: Offer) => void }) {
  return (
    <ul class="offers" aria-label="Known ones">
      {found.map((offer) => (
        <li key={offer.id}>
          <button type="button" class="offer" onClick={() => onPick(offer)}>
            <span>{offer.name}</span>
            {offer.note && <span class="small quiet">{offer.note}</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Records whose name has a word beginning with each word typed; a whole name first, else in the order offered. */
export function matching(offers: readonly Offer[], text: string): Offer[] {
  const wanted = words(text);
  const found = offers.filter((offer) => {
    const has = words(`${offer.name} ${offer.note ?? ""}`);
    return wanted.every((word) => has.some((each) => each.startsWith(word)));
  });
  const whole = text.trim().toLowerCase();
  return [
    ...found.filter((offer) => offer.name.toLowerCase() === whole),
    ...found.filter((offer) => offer.name.toLowerCase() !== whole),
  ];
}

function words(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);
}

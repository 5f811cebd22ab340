/**
 * Picks a known record by a few letters, or takes the words as a new one: rows large enough for a glove.
 *
 * With nothing typed the likeliest are offered at once, so that a known part costs one tap. A known name typed out is
 * that record: nobody means a second one by writing the first one's name.
 */

import { useId, useState } from "preact/hooks";
import { Button } from "../frame/Button";
import { afterPress } from "./afterPress";
import { matching, type Offer, type Picked, typedAs } from "./picking";
import "./RecordPick.css";

export type { Offer, Picked };

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
  const [typing, setTyping] = useState(false);
  const picked = pickedFrom(offers, value);
  const clear = () => onValue({ id: null, text: "" });
  if (picked && !typing) return <Chosen label={label} offer={picked} onChange={clear} />;
  const found = picked ? [] : matching(offers, value.text).slice(0, show);
  const pick = (offer: Offer) => {
    setTyping(false);
    onValue({ id: offer.id, text: offer.name });
  };
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
        data-needed={makes && !value.text.trim() ? "" : undefined}
        onFocus={() => setTyping(true)}
        onBlur={() => afterPress(() => setTyping(false))}
        onInput={(event) => onValue(typedAs(offers, event.currentTarget.value))}
      />
      {found.length > 0 && <Offers found={found} onPick={pick} />}
      <p class="hint" id={`${id}-about`} aria-live="polite">
        {becomes(value, makes) ?? hint}
      </p>
    </div>
  );
}

/** What the words typed will be, as one sentence; null while there is nothing to say. */
function becomes({ id, text }: Picked, makes: string | undefined): string | null {
  if (id !== null) return `“${text.trim()}” is known: that one. Add a word for another.`;
  return makes && text.trim() ? `“${text.trim()}” will be ${makes}.` : null;
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
        <Button look="plain" label="Change" onClick={onChange} />
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

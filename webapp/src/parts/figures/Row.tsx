/** A line of a list: what it is, what is said of it, its figure; with an address it can be tapped through. */
import type { ComponentChildren } from "preact";

type Props = {
  name: ComponentChildren;
  note?: ComponentChildren;
  value?: ComponentChildren;
  under?: ComponentChildren;
  href?: string;
  onTap?: () => void;
  lead?: ComponentChildren;
};

/** "15 lb 6.1 oz ± 1.0 oz" in two pieces, neither of which is torn apart. */
function Parted({ text }: { text: string }) {
  const at = text.indexOf(" ± ");
  if (at < 0) return <>{text}</>;
  return (
    <>
      <span class="num">{text.slice(0, at)}</span> <span class="num">{text.slice(at + 1)}</span>
    </>
  );
}

export function Row({ name, note, value, under, href, onTap, lead }: Props) {
  const body = (
    <>
      {lead}
      <span class="row-text">
        <span class="row-name">{name}</span>
        {note && <span class="small quiet">{note}</span>}
      </span>
      {(value || under) && (
        <span class="row-value num">
          {typeof value === "string" ? <Parted text={value} /> : value}
          {under && <small>{under}</small>}
        </span>
      )}
    </>
  );
  if (href)
    return (
      <a class="row" href={href}>
        {body}
      </a>
    );
  if (onTap)
    return (
      <button type="button" class="row" onClick={onTap}>
        {body}
      </button>
    );
  return <div class="row">{body}</div>;
}

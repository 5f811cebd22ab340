/** What is pressed: a button, or a link that looks like one. The main one is the screen's next step. */
export type Look = "main" | "wide" | "plain" | "";
type Props = { label: string; look?: Look };
type Pressed = Props & { onClick?: () => void; disabled?: boolean; tabIndex?: number; "aria-label"?: string };

export function Button({ label, look, ...more }: Pressed) {
  return (
    <button type="button" class={classOf(look)} {...more}>
      {label}
    </button>
  );
}

export function ButtonLink({ label, look, href }: Props & { href: string }) {
  return (
    <a class={classOf(look)} href={href}>
      {label}
    </a>
  );
}

const classOf = (look: Look = "") => `button ${look}`.trim();

/** The frame every screen shares: a way back, its name, where the records are, and its content. */
import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import { Icon } from "./Icon";
import { SyncWords } from "./SyncWords";

type Props = { title: string; back?: string; children: ComponentChildren };

export function Screen({ title, back, children }: Props) {
  useEffect(() => {
    document.title = `${title} · Tarebook`;
  }, [title]);
  return (
    <>
      <header class="screen-head">
        {back && (
          <a class="back" href={back} aria-label="Back">
            <Icon name="back" />
          </a>
        )}
        <h1>{title}</h1>
        <SyncWords />
      </header>
      {children}
    </>
  );
}

export function Section({
  title,
  aside,
  children,
}: {
  title: string;
  aside?: ComponentChildren;
  children: ComponentChildren;
}) {
  return (
    <section class="section" aria-label={title}>
      <div class="spread">
        <h2>{title}</h2>
        {aside}
      </div>
      {children}
    </section>
  );
}

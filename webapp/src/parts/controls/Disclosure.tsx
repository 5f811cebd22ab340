/** Words that can be opened: for what may be said and need not be. */
import type { ComponentChildren } from "preact";
import "./Disclosure.css";

export function Disclosure({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <details class="disclosure">
      <summary>{title}</summary>
      <div class="stack">{children}</div>
    </details>
  );
}

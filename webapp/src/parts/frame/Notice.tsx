/** Words in a quiet frame: a caution, a refusal with what to do, or that something was saved. */
import type { ComponentChildren } from "preact";

type Trouble = { sentence: string; do: string };

export function Notice({
  sort = "plain",
  children,
}: {
  sort?: "plain" | "caution" | "saved";
  children: ComponentChildren;
}) {
  return (
    <div class={`notice ${sort}`} role={sort === "saved" ? "status" : "note"}>
      {children}
    </div>
  );
}

export function TroubleNotice({ trouble }: { trouble: Trouble | null }) {
  if (!trouble) return null;
  return (
    <div class="notice caution" role="alert">
      <p>
        <strong>{trouble.sentence}</strong>
      </p>
      <p>{trouble.do}</p>
    </div>
  );
}

/**
 * Saying where a part sits: by a finger on the car from above and from its left, and by a tape measure.
 *
 * The finger comes first, because in a garage it is nearly always good enough; the fields below take what a tape measure says.
 */
import type { ComponentChildren } from "preact";
import { useMemo, useState } from "preact/hooks";
import { book } from "../../answers";
import { describe } from "../../errors";
import { to } from "../../route";
import { FieldsOf } from "../forms/FieldOf";
import "../../laterErrors";
import { unitOf } from "../../garage/units";
import type { Form } from "../forms/form";
import { TroubleNotice } from "../frame/Notice";
import { CarView } from "./CarView";
import type { Centre } from "./CentreMark";
import { halfOf, type Mark, spotOf } from "./marks";
import { type Mover, newMover, useFollowing } from "./mover";
import { placeInForm, setFromFinger } from "./placeInForm";
import { fingerWithin, placePhrases, spotWords } from "./placeWords";
import { scaleWords, shapeOf } from "./shape";
import { type Spot, sideView, topView, type View } from "./view";

type Props = {
  form: Form<"part">;
  /** Its mass, kg, on the car positive: how large and of which form its mark is. */
  mass: number;
  /** The other weights, to find one's way by. */
  marks?: readonly Mark[];
  mover?: Mover;
  centre?: Centre | null;
  centreMover?: Mover | null;
  /** Stands below the view from the left. */
  children?: ComponentChildren;
};

const NO_MARKS: readonly Mark[] = [];

export function PlaceOnCar({ form, mass, marks = NO_MARKS, mover: given, centre, centreMover, children }: Props) {
  const [own] = useState(() => given ?? newMover());
  const mover = given ?? own;
  const shape = useMemo(() => shapeOf(book.value.car), [book.value.car]);
  const views = useMemo(() => shape && [topView(shape), sideView(shape)], [shape]);
  const place = placeInForm(form);
  const spot = place ? spotOf(place) : { x: NaN, y: NaN, z: NaN };
  const placing = { spot, mover, mass, onDrop: (at: Spot, view: View) => setFromFinger(form, at, view) };
  const ghost = place && {
    key: form.id,
    part: form.id,
    name: "",
    mass,
    says: "",
    brief: "",
    planned: false,
    spot,
    half: halfOf(place),
    apart: 0,
  };
  const drawn = { marks, picked: ghost, placing, centre, centreMover };
  return (
    <div class="stack">
      <Known form={form} mover={mover} view={views?.[0] ?? null} />
      {shape && views ? (
        <>
          <div class="car-drawing">
            <CarView {...drawn} shape={shape} view={views[0]!} label="Place it from above" />
            <div class="stack">
              <CarView {...drawn} shape={shape} view={views[1]!} label="Place it from the left" />
              {children}
            </div>
          </div>
          <p class="small quiet">
            Tap the spot, or slide: the mark then stands above the finger. From above it sets how far back and which
            side, from the left how far back and how high. {scaleWords(shape)}
          </p>
        </>
      ) : (
        <p>
          The drawing needs the car's wheelbase. <a href={to("car-sheet")}>Enter it with the car</a>, or type the place
          below.
        </p>
      )}
      <ByTape form={form} />
    </div>
  );
}

/** How the place is known now, said anew while a finger moves it. */
function Known({ form, mover, view }: { form: Form<"part">; mover: Mover; view: View | null }) {
  const unit = unitOf("length");
  const place = placeInForm(form);
  const words = useFollowing<HTMLParagraphElement, Spot>(
    mover,
    (element, spot) => (element.textContent = spotWords(spot, unit)),
  );
  if (!place) return null;
  const rough = [...new Set(Object.values(place.by))].filter((by) => by !== "measured");
  const phrases = placePhrases(place, unit);
  const text = phrases.length ? phrases.join("\n") : "Nobody has said where it is.";
  return (
    <div>
      <p class="place-now" ref={words} key={text} aria-live="polite">
        {text}
      </p>
      {rough.length > 0 && view && (
        <p class="small quiet">
          {rough.includes("zone")
            ? "What was not measured is the rough place of its zone"
            : "It has no zone: it could be anywhere in the car"}
          , as wide as the dotted box. A tap makes it good to {`± ${fingerWithin(view, unit)}`}.
        </p>
      )}
      {place.outside.length > 0 && <TroubleNotice trouble={describe("place_outside")} />}
    </div>
  );
}

function ByTape({ form }: { form: Form<"part"> }) {
  return (
    <details>
      <summary class="button plain">By tape measure</summary>
      <div class="stack">
        <FieldsOf form={form} names={["x", "y", "z", "place_within"]} />
      </div>
    </details>
  );
}

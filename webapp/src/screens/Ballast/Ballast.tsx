/** How much ballast, and where: the answer first, then what is wanted and the places it may go. Works without signal. */
import { useMemo } from "preact/hooks";
import { book, bookWith, car, known, type Plain, stand } from "../../answers";
import { ballastChoice } from "../../core/ballast/ballastRecords";
import { garage } from "../../garage/garage";
import type { Rec } from "../../journal/types";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Notice } from "../../parts/frame/Notice";
import { Screen } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { to } from "../../route";
import { Answer, WithIt } from "./Answer";
import { Cross } from "./Cross";
import { NoAnswer } from "./NoAnswer";
import { PlaceForm } from "./PlaceForm";
import { Places } from "./Places";
import { Wishes } from "./Wishes";
import { unaimedOf } from "./words";
import "./Ballast.css";

export function Ballast({ id }: { id: string }) {
  if (id) return <PlaceForm id={id} />;
  return (
    <Screen title="Ballast" back={to("car")}>
      {car.value ? (
        <OfCar key={car.value.id} id={car.value.id} />
      ) : (
        <p>
          Write down the car first: <a href={to("car-sheet")}>its name and its sizes</a>.
        </p>
      )}
    </Screen>
  );
}

function OfCar({ id }: { id: string }) {
  const places = garage.value.of("ballast_place").filter(({ values }) => !values.car || values.car === id);
  const form = useForm("car", id);
  const wished = form.changed && !form.unreadable ? JSON.stringify({ ...form.values, id }) : null; // the answer follows what is typed
  const [whole, masses, now] = [book.value, known.value, stand.value];
  const choice = useMemo(
    () => ballastChoice(wished ? bookWith({ cars: [JSON.parse(wished) as Plain] }) : whole, {}, masses, now),
    [wished, whole, masses, now],
  );
  const { found } = choice;
  const isFound = found && places.length > 0;
  const told = unaimedOf(choice);
  return (
    <div class="stack">
      {form.unreadable ? (
        <Unread sentence={form.unreadable} />
      ) : isFound ? (
        <Answer choice={choice} found={found} places={places} />
      ) : (
        <NoAnswer choice={choice} places={places} />
      )}
      <Fixing />
      {isFound && !form.unreadable && <WithIt choice={choice} found={found} />}
      {places.length > 0 && <Wishes form={form} />}
      <Places places={places} />
      <Cross form={form} />
      <Warnings of={[...choice.warnings.filter((each) => !told.includes(each)), ...(found?.warnings ?? [])]} />
      <FormDock form={form} />
    </div>
  );
}

/** A wish that cannot be read has no answer; that of the wish before would be taken for it. */
function Unread({ sentence }: { sentence: string }) {
  return (
    <section class="ballast-answer" aria-label="How much, and where">
      <Notice sort="caution">
        <p>
          <strong>{sentence}</strong>
        </p>
      </Notice>
    </section>
  );
}

/** Common practice, no source; the rule book decides. */
function Fixing() {
  return (
    <Notice sort="caution">
      <p>
        <strong>Ballast that comes loose can kill.</strong> Bolt every block through the structure with load-spreading
        plates, as your class's rule book demands; never tape, glue or straps alone. The rule book decides where it may
        sit and how it is fixed. Have a licensed scrutineer look at it, and check every bolt after every run.
      </p>
    </Notice>
  );
}

export type OfPlaces = { places: readonly Rec<"ballast_place">[] };

/** Every part, or only those nobody has weighed, or those that rest on a guess or a quote. */
import { account } from "../../account";
import { known, say } from "../../answers";
import { showMoney } from "../../core/numbers/shownLater";
import { garage } from "../../garage/garage";
import type { Rec } from "../../journal/types";
import { unsettledWords } from "../../parts/conflicts/words";
import { Choice } from "../../parts/controls/Choice";
import { Row } from "../../parts/figures/Row";
import { Screen } from "../../parts/frame/Screen";
import { Learned } from "../../parts/weighing/Learned";
import { basisWord } from "../../parts/words/basis";
import { choiceWord } from "../../parts/words/fieldWords";
import { currency } from "../../parts/words/money";
import { nameOf } from "../../parts/words/naming";
import { type Address, replace, to } from "../../route";

const FILTERS = [
  { value: "all", label: "All" },
  { value: "unweighed", label: "Moved without a weight" },
  { value: "claimed", label: "Guessed or quoted" },
  { value: "jobless", label: "In no job" },
  { value: "sold", label: "Sold" },
];
export function Parts({ query }: Address) {
  const filter = query.get("show") ?? "all";
  const moved = new Set(
    account.value.in_car.flatMap((job) => account.value.jobs.get(job)?.lines.map((line) => line.part) ?? []),
  );
  const inJobs = new Set(garage.value.of("job_part").map((line) => line.values.part));
  const keeps = (part: Rec<"part">): boolean => {
    const basis = known.value.of.get(part.id)?.basis ?? null;
    if (filter === "unweighed") return account.value.unweighed.includes(part.id);
    if (filter === "jobless")
      return !inJobs.has(part.id) && part.values.whereabouts !== "yard" && part.values.whereabouts !== "left";
    if (filter === "sold") return part.values.whereabouts === "sold";
    if (filter === "claimed") return moved.has(part.id) && basis !== null && basis !== "weighed";
    return true;
  };
  const parts = garage.value
    .of("part")
    .filter(keeps)
    .sort((a, b) => nameOf(a).localeCompare(nameOf(b)));
  return (
    <Screen title="Parts" back={to("car")}>
      <div class="stack">
        <Choice
          label="Show"
          hideLabel
          value={filter}
          options={FILTERS}
          onValue={(value) => replace(to("parts", { show: value }))}
        />
        {filter === "claimed" &&
          Object.values(known.value.lessons).map((each) => <Learned key={each.basis} of={each} />)}
      </div>
      <div>
        {parts.map((part) => (
          <PartRow key={part.id} part={part} />
        ))}
      </div>
      {!parts.length && <p class="quiet">None.</p>}
    </Screen>
  );
}

function PartRow({ part }: { part: Rec<"part"> }) {
  const mass = known.value.of.get(part.id);
  const { zone, whereabouts, box, sold_for: soldFor } = part.values;
  const note = [
    basisWord(mass?.basis),
    zone,
    whereabouts !== "car" && choiceWord("part", "whereabouts", whereabouts).toLowerCase(),
    box,
    soldFor && `for ${showMoney(soldFor, currency())}`,
  ]
    .filter(Boolean)
    .join(" · ");
  return (
    <Row
      name={nameOf(part)}
      note={note}
      value={mass?.mass ? say(mass.mass) : "—"}
      under={unsettledWords(part.id)}
      href={to("part", part.id)}
    />
  );
}

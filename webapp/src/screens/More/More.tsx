/** What is set once and looked up rarely: the car, its class, scales, drivers, and the phone itself. */
import { car, sheets } from "../../answers";
import { garage } from "../../garage/garage";
import type { KindName } from "../../journal/kinds";
import { Row } from "../../parts/figures/Row";
import { Screen, Section } from "../../parts/frame/Screen";
import { to } from "../../route";
import { sync } from "../../sync/state";
import { updateReady } from "../../sync/update";

const count = (kind: KindName, one: string, many: string) => {
  const number = garage.value.of(kind).length;
  return number === 1 ? `1 ${one}` : `${number} ${many}`;
};

function deletedWords(): string {
  const number = [...garage.value.byId.values()].filter((rec) => rec.deleted).length;
  return number ? `${number} deleted, to bring back` : "Nothing deleted";
}

export function More() {
  const open = garage.value.aside.length;
  return (
    <Screen title="More">
      <Section title="The car">
        <Row name="Car" note={car.value?.values.name ?? "Not named yet"} href={to("car-sheet")} />
        <Row
          name="Class sheet"
          note={sheets.value[0]?.values.name ?? "No minimum noted yet"}
          href={to("class-sheet")}
        />
        <Row name="Drivers with gear" note={count("driver", "driver", "drivers")} href={to("drivers")} />
        <Row name="Stages" note={count("stage", "stage", "stages")} href={to("stages")} />
        <Row name="All parts" note={count("part", "part", "parts")} href={to("parts")} />
      </Section>
      <Section title="The tools">
        <Row name="Scales" note={count("scale", "scale", "scales")} href={to("scales")} />
        <Row name="Sheet" note="What a part cut from sheet will weigh" href={to("sheet", "new")} />
        <Row name="Units" note="Mass, length, fuel, money, guesses" href={to("units")} />
      </Section>
      <Section title="The records">
        <Row
          name="Where the records are"
          note={sync.value.words[0] ?? ""}
          value={open ? String(open) : ""}
          under={open ? "set aside" : ""}
          href={to("records")}
        />
        <Row name="Bin" note={deletedWords()} href={to("bin")} />
        <Row
          name="Devices and this app"
          note={updateReady.value ? "A new version is ready" : "Pairing, installing, new versions"}
          href={to("devices")}
        />
      </Section>
    </Screen>
  );
}

/** Drivers, weighed in the gear they race in: where the class weighs the car with its driver, the lightest decides. */

import { known, say } from "../../answers";
import { garage } from "../../garage/garage";
import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { FieldOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { OpenList } from "../../parts/forms/OpenList";
import { ButtonLink } from "../../parts/frame/Button";
import { Screen } from "../../parts/frame/Screen";
import { basisWord } from "../../parts/words/basis";
import { optionsOf } from "../../parts/words/fieldWords";
import { to } from "../../route";

const BASES = optionsOf("driver", "claim_basis").filter(({ value }) => value !== "worked_out");

export function Drivers() {
  return (
    <Screen title="Drivers with gear" back={to("more")}>
      <p class="quiet">
        Weigh every driver in suit, shoes and helmet, as your rule book weighs them. The lightest who will drive
        decides.
      </p>
      <OpenList
        of={garage.value.of("driver")}
        row={(driver, onTap) => <DriverRow driver={driver} onTap={onTap} />}
        form={(id, onDone) => <DriverForm id={id} onDone={onDone} />}
        add="Add a driver"
      />
    </Screen>
  );
}

function DriverRow({ driver, onTap }: { driver: Rec<"driver">; onTap: () => void }) {
  const found = known.value.of.get(driver.id);
  return (
    <Row
      name={driver.values.name}
      value={found?.mass ? say(found.mass) : "not weighed"}
      under={basisWord(found?.basis)}
      onTap={onTap}
    />
  );
}

function DriverForm({ id, onDone }: { id: string; onDone: () => void }) {
  const form = useForm("driver", id);
  return (
    <div class="stack notice">
      <FieldOf form={form} name="name" />
      <FieldOf form={form} name="claim" />
      <FieldOf form={form} name="claim_basis" options={BASES} />
      {!form.isNew && (
        <ButtonLink look="wide" label="Weigh with gear" href={to("weigh-part", form.id, { back: to("drivers") })} />
      )}
      <FormDock
        form={form}
        missing={form.text("name").trim() ? null : "Give the driver a name."}
        onDone={onDone}
        remove={{ label: "Delete this driver", next: to("drivers") }}
      />
    </div>
  );
}

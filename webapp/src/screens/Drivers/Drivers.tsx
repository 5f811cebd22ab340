/** Drivers, weighed in the gear they race in: where the class weighs the car with its driver, the lightest decides. */
import { useState } from "preact/hooks";
import { known, say } from "../../answers";
import { garage } from "../../journal/garage";
import type { Rec } from "../../journal/types";
import { Choice, TextField } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { Row } from "../../parts/figures/Row";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Screen } from "../../parts/frame/Screen";
import { basisWord } from "../../parts/words/basis";
import { unitOf } from "../../parts/words/units";
import { to } from "../../route";

const BASES = [
  { value: "guessed", label: "Guessed" },
  { value: "quoted", label: "Told" },
];

export function Drivers() {
  const [open, setOpen] = useState<string | null>(null);
  return (
    <Screen title="Drivers with gear" back={to("more")}>
      <p class="quiet">
        Weigh every driver in suit, shoes and helmet, as your rule book weighs them. The lightest who will drive
        decides.
      </p>
      {garage.value
        .of("driver")
        .map((driver) =>
          open === driver.id ? (
            <DriverForm key={driver.id} id={driver.id} onDone={() => setOpen(null)} />
          ) : (
            <DriverRow key={driver.id} driver={driver} onTap={() => setOpen(driver.id)} />
          ),
        )}
      {open === "new" ? (
        <DriverForm id="new" onDone={() => setOpen(null)} />
      ) : (
        <button type="button" class="button wide" onClick={() => setOpen("new")}>
          Add a driver
        </button>
      )}
    </Screen>
  );
}

function DriverRow({ driver, onTap }: { driver: Rec; onTap: () => void }) {
  const found = known.value.of.get(driver.id);
  return (
    <Row
      name={String(driver.values["name"])}
      value={found?.mass ? say(found.mass) : "not weighed"}
      under={basisWord(found?.basis)}
      onTap={onTap}
    />
  );
}

function DriverForm({ id, onDone }: { id: string; onDone: () => void }) {
  const form = useForm("driver", id, { claim_basis: "quoted" });
  return (
    <div class="stack notice">
      <TextField label="Name" value={form.text("name")} onValue={(value) => form.set("name", value)} most={120} />
      <QuantityField
        label="Mass with gear, until weighed"
        kind="mass"
        unit={unitOf("mass")}
        value={form.text("claim")}
        onValue={(value) => form.set("claim", value)}
      />
      <Choice
        label="That mass is"
        value={form.text("claim_basis")}
        options={BASES}
        onValue={(value) => form.set("claim_basis", value)}
      />
      {!form.isNew && (
        <a class="button wide" href={to("weigh-part", id, { back: to("drivers") })}>
          Weigh with gear
        </a>
      )}
      <FormDock
        form={form}
        missing={form.text("name").trim() ? null : "Give the driver a name."}
        after={async () => onDone()}
        remove={{
          label: "Delete this driver",
          warning: "Weigh-ins made with this driver will not know the mass any more. Delete?",
          next: to("drivers"),
        }}
      />
    </div>
  );
}

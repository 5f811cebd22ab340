/** Lifting an axle of a weighed car: the guide and its two numbers, by the weigh-in's id; a lift that is saved, by its own. */
import "./Lift.css";
import { book } from "../../answers";
import { garage } from "../../garage/garage";
import { NotHere } from "../../parts/frame/NotHere";
import { Notice } from "../../parts/frame/Notice";
import { Screen } from "../../parts/frame/Screen";
import { type Address, to } from "../../route";
import { Guide } from "./Guide";
import { Trail } from "./Trail";

export function Lift({ id, query }: Address) {
  const replaces = query.get("replaces");
  const lift = garage.value.one("lift", id);
  const rec = garage.value.one("weigh_in", id);
  if (lift) return <Trail rec={lift} />;
  if (!rec) return <NotHere what="A weigh-in to lift from" back={to("balance")} />;
  return (
    <Screen title={replaces ? "Lift an axle again" : "Lift an axle"} back={to("weigh-in", id)}>
      {book.value.weigh_ins.has(id) ? <Guide weighIn={rec} replaces={replaces} /> : <Gone id={id} />}
    </Screen>
  );
}

function Gone({ id }: { id: string }) {
  return (
    <Notice sort="caution">
      <p>
        <strong>This weigh-in does not count any more.</strong> A lift belongs to a level weigh-in that does.
      </p>
      <p>
        <a href={to("weigh-in", id)}>Look at the weigh-in</a>
      </p>
    </Notice>
  );
}

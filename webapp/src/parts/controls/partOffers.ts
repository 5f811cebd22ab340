/** Parts as a picker offers them, each with what it weighs and how that is known. */
import { account } from "../../account";
import { known, lists, say } from "../../answers";
import { onCar } from "../../core/ledger/onCar";
import { garage } from "../../garage/garage";
import type { Rec } from "../../journal/types";
import { basisWord } from "../words/basis";
import { nameOf } from "../words/naming";
import type { Offer } from "./picking";

export function partOffers(parts: readonly Rec<"part">[] = garage.value.of("part")): Offer[] {
  return parts.map((part) => {
    const { mass, basis } = known.value.of.get(part.id) ?? {};
    return { id: part.id, name: nameOf(part), note: mass ? `${say(mass)} ${basisWord(basis)}` : basisWord(null) };
  });
}

/** Whether a part is on the car now, fitted jobs counted. */
export function isOnCar(part: string): boolean {
  const { jobs, in_car } = account.value;
  const record = lists.value.parts?.find((each) => each.id === part);
  return (
    record !== undefined &&
    onCar(
      record,
      in_car.flatMap((job) => jobs.get(job) ?? []),
    )
  );
}

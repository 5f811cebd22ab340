/** The weight now on a screen whose own figures are of another condition: the same figure everywhere, with what it counts. */
import { say, stand } from "../../answers";
import { to } from "../../route";
import { refName } from "../words/naming";
import { Row } from "./Row";

export function WeightNow() {
  const { weight } = stand.value;
  return weight && <Row name="Weight now" note={counted()} value={say(weight)} href={to("standing")} />;
}

const TANK = {
  as_it_is: "fuel as at the last weigh-in",
  empty: "tank empty",
  full: "tank full",
  stated: "fuel as stated",
};

function counted(): string {
  const { driver, lightest, fuel } = stand.value.condition;
  const seat = driver === "out" ? "without a driver" : lightest ? `with ${refName(lightest)}` : "no driver weighed";
  return `as the class weighs it: ${seat}, ${TANK[fuel]}`;
}

/** What the car weighs now, how sure that is, how far from the minimum; and below it, where that comes from and what is open. */

import { car, minimumWords, say, stand } from "../../answers";
import { isSignificant } from "../../core/standing/gap";
import { gapSentence, inHandSentence, marginSentence } from "../../core/standing/sentences";
import { isUnder, type Standing as Stand } from "../../core/standing/standing";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { TrimChoice } from "../../parts/controls/TrimChoice";
import { armOf } from "../../parts/figures/arm";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Steelyard } from "../../parts/figures/Steelyard";
import { ButtonLink } from "../../parts/frame/Button";
import { Loaded } from "../../parts/frame/Loaded";
import { Notice, TroubleNotice } from "../../parts/frame/Notice";
import { Screen } from "../../parts/frame/Screen";
import { nameOf, refName } from "../../parts/words/naming";
import { to } from "../../route";
import { sync } from "../../sync/state";
import "./Car.css";

export function Car() {
  return (
    <Screen title={nameOf(car.value!)}>
      <OffTheList />
      <TrimChoice />
      <WeightNow />
      <Loaded
        load={async () => (await import("../../parts/weighing/LeftHalfDone")).LeftHalfDone}
        draw={(Left) => <Left />}
      />
      <Loaded load={async () => (await import("./Below")).Below} draw={(Below) => <Below />} />
    </Screen>
  );
}

/** What it writes from now on stays on this phone. */
function OffTheList() {
  const { refusal } = sync.value;
  if (refusal?.code !== "revoked") return null;
  return (
    <>
      <TroubleNotice trouble={refusal} />
      <ButtonLink look="wide" label="Join again" href={to("devices")} />
    </>
  );
}

function WeightNow() {
  const now = stand.value;
  const margin = marginSentence(now, massUnit());
  const under = isUnder(now);
  return (
    <section class="weight-now" aria-label="Weight now">
      <a class="weight-link" href={to("standing")}>
        <span class="spread small">
          <span class="quiet">{now.weight ? "Weight now" : "Taken out so far"}</span>
          <span class="made-of">What it is made of</span>
        </span>
        {(now.weight || now.removed.value !== 0) && <MassFigure mass={now.weight ?? now.removed} under={under} />}
      </a>
      <Steelyard {...armOf(now)} label={margin.text} />
      <ArmEnds />
      <p class={under ? "margin under" : "margin"}>{margin.text}.</p>
      {now.weight && (
        <p>
          {now.official && <a href={to("standing")}>{inHandSentence(now.official, massUnit()).text}</a>}{" "}
          <span class="quiet">{counted(now)}</span>
        </p>
      )}
      {now.history.length > 0 && (
        <Loaded
          load={async () => (await import("../../parts/weighIn/HowSure")).BesideWeight}
          draw={(Beside) => <Beside />}
        />
      )}
      {now.since && now.since.unweighed.length > 0 && (
        <ButtonLink label="Weigh what moved without a weight" href={to("parts", { show: "unweighed" })} />
      )}
      {now.gap && isSignificant(now.gap) && (
        <Notice>
          <p>
            <strong>{gapSentence(now.gap, massUnit()).text}.</strong> Something went in or came out without a note, or a
            reading is wrong.
          </p>
          <ButtonLink label="Look at the last weigh-in" href={to("weigh-in", now.gap.second)} />
        </Notice>
      )}
      {!now.weight && <ButtonLink look="main" label="Weigh the whole car" href={to("weigh-car")} />}
    </section>
  );
}

/** Whom and what the weight counts, in a few words: "With Anna, the lightest driver; 12 L as at the weigh-in." */
function counted({ condition, fused }: Stand): string {
  const { driver, lightest, fuel } = condition;
  const seat =
    driver !== "in"
      ? "Without a driver"
      : lightest
        ? `With ${refName(lightest)}, the lightest driver`
        : "No driver has been weighed";
  const litres = garage.value.one("weigh_in", fused?.fusion.evidence.counted.at(-1)?.record.id)?.values.fuel ?? "fuel";
  return `${seat}; ${fuel === "as_it_is" ? `${litres} as at the weigh-in` : TANK[fuel]}.`;
}

const TANK = { empty: "the tank empty", full: "the tank full", stated: "the fuel the class says" };

/** What stands at the two ends of the arm. */
function ArmEnds() {
  const { start } = stand.value;
  return (
    <p class="arm-ends num">
      <span>
        {start && (
          <>
            <a href={start.weigh_in ? to("weigh-in", start.weigh_in) : to("car-sheet")}>Start</a>{" "}
            <strong>{say(start.weight)}</strong>
            {start.basis === "quoted" ? ", as quoted" : ", that day"}
          </>
        )}
      </span>
      <span>
        {minimumWords.value ? (
          <>
            <a href={to("class-sheet")}>Minimum</a> <strong>{minimumWords.value}</strong>
          </>
        ) : (
          <a href={to("class-sheet")}>Note the class minimum</a>
        )}
      </span>
    </p>
  );
}

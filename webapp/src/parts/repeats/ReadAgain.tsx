/**
 * Reading the same thing again: lifted or rolled off and on, one tap and then the figure.
 *
 * The readings stand side by side. One that is odd among them is named, and can be left out at one tap and taken back
 * in; nothing is left out by itself.
 */
import { useState } from "preact/hooks";
import { known } from "../../answers";
import { showMass } from "../../core/numbers/shown";
import { mean, type Read } from "../../core/weighing/repeats";
import { garage } from "../../garage/garage";
import { deletion } from "../../garage/undo";
import { save } from "../../garage/write";
import { Disclosure } from "../controls/Disclosure";
import { Row } from "../figures/Row";
import { SaveButton } from "../forms/SaveButton";
import { Button } from "../frame/Button";
import { Notice } from "../frame/Notice";
import { Section } from "../frame/Screen";
import { repeatWords } from "../weighing/trust";
import { AgainForm } from "./AgainForm";
import { countedOf, isRepeated, type LookRead, oddRead, type ReadSet, setRead, thirdWanted } from "./set";
import { apartWords, listed, oddWords, whichWords } from "./words";

/** `how`: what one does for it, "lift it off and on". `what` is read, where that is not plain. */
type Props = { of: string; how: string; what?: string };

export function ReadAgain({ of, how, what }: Props) {
  const [open, setOpen] = useState(false);
  const set = setRead(of);
  if (!set) return null;
  const times = Math.max(...set.looks.map(({ read }) => read.length));
  const start = <Button look="wide" label={`Again: ${how}`} onClick={() => setOpen(true)} />;
  if (times < 2 && !open) return start;
  return (
    <Section title={what ? `Read again: ${what}` : "Read again"}>
      <div class="stack">
        {isRepeated(set) && <Readings set={set} />}
        <Odd set={set} />
        {open ? (
          <AgainForm key={times + garage.value.of("repeat").length} set={set} onDone={() => setOpen(false)} />
        ) : (
          start
        )}
        {isRepeated(set) && <LeaveOut set={set} />}
      </div>
    </Section>
  );
}

function Readings({ set }: { set: ReadSet }) {
  return (
    <div>
      {set.looks.map((look) => (
        <LookRow key={look.look} look={look} />
      ))}
      {repeatWords(known.value.scales.get(set.scale ?? "")).map((words) => (
        <p key={words} class="small quiet">
          {words}
        </p>
      ))}
    </div>
  );
}

function LookRow({ look }: { look: LookRead }) {
  const counted = countedOf(look);
  const shown = (counted.length ? counted : look.read).map((each) => each.shown);
  if (!shown.length) return null;
  const values = shown.map(({ value }) => value);
  const spread = Math.max(...values) - Math.min(...values);
  const words = spread ? `within ${showMass(spread, shown[0]!.unit)}` : "all alike";
  return (
    <Row
      name={look.label || "The scale showed"}
      note={listed(counted)}
      value={showMass(mean(shown), shown[0]!.unit)}
      under={shown.length > 1 ? `mean of ${shown.length}, ${words}` : "read once"}
    />
  );
}

function Odd({ set }: { set: ReadSet }) {
  const odd = oddRead(set);
  if (odd)
    return (
      <Notice sort="caution">
        <p>
          <strong>{oddWords(odd)}</strong> Too far to be chance: leave it out, or read it again.
        </p>
        <Leave read={odd.read} look={odd.look} label="Leave it out" />
      </Notice>
    );
  const wanted = thirdWanted(set);
  if (!wanted.length) return null;
  return (
    <Notice sort="caution">
      {wanted.map(({ look, apart }) => (
        <p key={look.look}>
          <strong>{apartWords(look, apart)}</strong> Read it a third time: that tells which one is off.
        </p>
      ))}
    </Notice>
  );
}

type One = { read: Read; look: LookRead; label: string };

function Leave({ read, look, label }: One) {
  const leave = () => save([{ kind: "omission", set: { of: read.of, reading: look.look }, base: [] }]);
  return <SaveButton look="" label={label} onSave={leave} />;
}

function TakeBack({ read, look, label }: One) {
  const back = () =>
    save(
      garage.value
        .of("omission")
        .filter(({ values }) => values.of === read.of && values.reading === look.look)
        .map(({ id }) => deletion("omission", id)),
    );
  return <SaveButton look="" label={label} onSave={back} />;
}

/** Any reading, by a person who knows why; and those left out, to be taken back in. */
function LeaveOut({ set }: { set: ReadSet }) {
  const all = set.looks.flatMap((look) => look.read.map((read, at) => ({ look, read, nth: at + 1 })));
  const out = all.filter(({ read }) => read.left_out);
  return (
    <>
      {out.map(({ look, read, nth }) => (
        <Row
          key={read.of + look.look}
          name={<s>{read.shown.reads}</s>}
          note={`${whichWords(look, nth)}, left out`}
          value={<TakeBack read={read} look={look} label="Take it back in" />}
        />
      ))}
      <Disclosure title="Leave a reading out">
        {all
          .filter(({ look, read }) => !read.left_out && countedOf(look).length > 1)
          .map(({ look, read, nth }) => (
            <Row
              key={read.of + look.look}
              name={read.shown.reads}
              note={whichWords(look, nth)}
              value={<Leave read={read} look={look} label="Leave it out" />}
            />
          ))}
      </Disclosure>
    </>
  );
}

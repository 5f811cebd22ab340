/**
 * The control of one field, named: its label, hint, choices, unit and bounds are what its kind declares.
 *
 * A screen says what only it can know: which records can be picked, that a field is needed now, other words at this place.
 */
import type { ComponentChildren } from "preact";
import type { Measure } from "../../garage/units";
import { type Field, KINDS, type KindName, type Told } from "../../journal/kinds";
import type { FieldOf as Name, Value } from "../../journal/types";
import { InDispute } from "../conflicts/Dispute";
import { Choice, type Option } from "../controls/Choice";
import { Pick, TextField, Tick } from "../controls/Field";
import { PlaceField } from "../controls/PlaceField";
import { QuantityField } from "../controls/QuantityField";
import { isLongText, labelOf, optionsOf, toldOf } from "../words/fieldWords";
import { sentenceCase } from "../words/naming";
import { fractionOf, percentOf } from "../words/percent";
import type { Filled } from "./form";
import { NotKept } from "./NotKept";
import { troubleIn, unlikely } from "./unreadable";

/** What a screen may say otherwise than the declaration. */
type Otherwise = {
  label?: string;
  hint?: ComponentChildren;
  trouble?: string | null;
  options?: readonly Option<string>[];
  unit?: string | null;
  needed?: boolean;
  hideLabel?: boolean;
  /** The choice that counts while none is made. */
  taken?: string;
  /** Texts offered while one types. */
  list?: string[];
  /** In place of setting the field. */
  onValue?: (value: string) => void;
};
type Props<K extends KindName> = { form: Filled<K>; name: Name<K> } & Otherwise;
/** `value`: as the form has it; `text`: the same, typed. */
type Drawn = {
  spec: Field;
  told: Told;
  label: string;
  hint?: ComponentChildren;
  value: Value | undefined;
  text: string;
  set: (value: Value) => void;
};

const MOST_CHOICES = 6; // of more, one is picked from a list

export function FieldOf<K extends KindName>({ form, name, onValue, ...otherwise }: Props<K>) {
  const spec = KINDS[form.kind]!.fields[name]!;
  const told = toldOf(form.kind, name);
  const any = form as unknown as Filled;
  const set = (value: Value) => (onValue ? onValue(String(value ?? "")) : any.set(name, value));
  const options = otherwise.options ?? optionsOf(form.kind, name);
  const label = otherwise.label ?? labelOf(form.kind, name);
  const hint = otherwise.hint ?? told.hint;
  const text = any.text(name) || (otherwise.taken ?? "");
  const unkept = any.unkept?.(name) ?? null;
  const drawn = { ...otherwise, spec, told, label, hint, value: any.values[name], text, set };
  return (
    <div class="kept-field">
      <Control {...drawn} options={options} />
      {any.id && <InDispute record={any.id} field={name} />}
      {unkept && <NotKept kind={form.kind} name={name} isEmpty={!text} {...unkept} />}
    </div>
  );
}

function Control({ options, ...drawn }: Drawn & Choices) {
  const { spec, label, value, set } = drawn;
  if (spec.type === "flag" && !options.length) return <Tick label={label} value={value === true} onValue={set} />;
  if (options.length || spec.type === "ref") return <ChoiceField {...drawn} options={options} />;
  if (spec.type === "mass" || spec.type === "length" || spec.type === "volume")
    return <MeasureField {...drawn} kind={spec.type} />;
  return <TypedField {...drawn} />;
}

/** Several fields one below the other, just as they are declared. */
export function FieldsOf<K extends KindName>({ form, names }: { form: Filled<K>; names: readonly Name<K>[] }) {
  return (
    <>
      {names.map((name) => (
        <FieldOf key={name} form={form} name={name} />
      ))}
    </>
  );
}

type Choices = { options: readonly Option<string>[]; hideLabel?: boolean };

function ChoiceField({ spec, told, label, hint, value, text, set, options, hideLabel }: Drawn & Choices) {
  const shared = { label, hint, options };
  if (spec.type === "flag") {
    const chosen = typeof value === "boolean" ? (value ? "yes" : "no") : null;
    return <Choice {...shared} value={chosen} onValue={(next) => set(next === "yes")} hideLabel={hideLabel} />;
  }
  const isList = told.none || options.length > MOST_CHOICES;
  return isList ? (
    <Pick {...shared} value={text} onValue={set} none={told.none} />
  ) : (
    <Choice {...shared} value={text} onValue={set} hideLabel={hideLabel} />
  );
}

type Measured = { kind: Measure; trouble?: string | null; unit?: string | null; needed?: boolean };

function MeasureField({ spec, told, label, hint, text, set, kind, trouble, unit, needed }: Drawn & Measured) {
  const shared = { label, hint, value: text, onValue: set };
  if (told.sides) return <PlaceField {...shared} sides={told.sides} />;
  const late = unlikely(spec, text);
  return <QuantityField {...shared} kind={kind} trouble={trouble} lateTrouble={late} unit={unit} needed={needed} />;
}

function TypedField({
  spec,
  told,
  label,
  hint,
  text,
  set,
  ...more
}: Drawn & { trouble?: string | null; list?: string[] }) {
  const shared = { label, hint, trouble: more.trouble ?? troubleOf(spec, text) };
  switch (spec.type) {
    case "moment":
      if (told.unit === "day") return <TextField {...shared} type="date" value={text.slice(0, 10)} onValue={set} />;
      return <TextField {...shared} type="datetime-local" value={text} onValue={set} />;
    case "count":
    case "integer":
      return <TextField {...shared} mode="numeric" value={text} onValue={(typed) => set(wholeOf(spec, typed))} />;
    case "money":
    case "hours":
    case "fraction":
      if (told.unit !== "percent") return <TextField {...shared} mode="decimal" value={text} onValue={set} />;
      return (
        <TextField
          {...shared}
          mode="decimal"
          most={9}
          value={percentOf(text)}
          onValue={(typed) => set(fractionOf(typed))}
        />
      );
    default: {
      const isLong = isLongText(spec);
      return <TextField {...shared} value={text} onValue={set} most={spec.most} long={isLong} list={more.list} />;
    }
  }
}

function troubleOf(spec: Field, text: string): string | null {
  const unread = text && troubleIn(spec, text);
  return unread ? sentenceCase(unread) : null;
}

/** The digits typed, of a number below the most: whatever else is typed leaves it as it can be read. */
function wholeOf({ type, most }: Field, typed: string): number | null {
  const digits = typed.replace(/\D/g, "").slice(0, String(most! - 1).length);
  return digits === "" || (type === "count" && Number(digits) === 0) ? null : Number(digits);
}

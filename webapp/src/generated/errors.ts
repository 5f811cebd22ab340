// Written by `python -m tarebook.contract`. Do not edit.

import type { LATER_ERRORS } from "./laterErrors";

export const ERRORS = {
  "bad_request": {
    "sentence": "The request could not be read.",
    "do": "Reload the app; if it happens again, export and report it."
  },
  "malformed_json": {
    "sentence": "What was sent is not readable JSON: {reason}.",
    "do": "Send one JSON object in UTF-8."
  },
  "bad_input": {
    "sentence": "Something sent has the wrong shape.",
    "do": "Look at the fields named in the data and send them as documented."
  },
  "too_large": {
    "sentence": "That is more than one request may carry.",
    "do": "Send it in smaller pieces."
  },
  "wrong_host": {
    "sentence": "This server does not answer to that host name.",
    "do": "Open the address that tarebook serve printed."
  },
  "rate_limited": {
    "sentence": "Too many tries in a short time.",
    "do": "Wait a minute and try again."
  },
  "broken": {
    "sentence": "The server met a fault of its own.",
    "do": "Nothing you saved is lost. Try again; if it happens again, report it."
  },
  "busy": {
    "sentence": "The database is busy.",
    "do": "It will be tried again by itself."
  },
  "unpaired": {
    "sentence": "This device is not paired with the garage.",
    "do": "Pair it with a fresh link from the home computer. Its records stay here."
  },
  "revoked": {
    "sentence": "This device was taken off the garage's list.",
    "do": "Everything is still here: export it, then pair again."
  },
  "protocol": {
    "sentence": "This app is too old or too new to talk to the home computer.",
    "do": "Update the app; until then export keeps everything safe."
  },
  "other_garage": {
    "sentence": "These records belong to another garage.",
    "do": "Pair this app with the garage they came from."
  },
  "rewound": {
    "sentence": "The home computer was restored from an older copy.",
    "do": "The app sends again everything it holds, by itself."
  },
  "too_many_entries": {
    "sentence": "One push may carry at most {most} entries.",
    "do": "The app sends smaller batches by itself."
  },
  "entry_too_large": {
    "sentence": "One record may be at most {most} bytes long.",
    "do": "Shorten its note."
  },
  "upload_unknown": {
    "sentence": "There is no such upload.",
    "do": "The app starts it again by itself."
  },
  "upload_offset": {
    "sentence": "The upload goes on at byte {offset}.",
    "do": "The app goes on from there by itself."
  },
  "photo_too_large": {
    "sentence": "A photo may be at most {most} bytes long.",
    "do": "Take it again, or choose a smaller one."
  },
  "photo_hash_mismatch": {
    "sentence": "The photo arrived damaged.",
    "do": "The app sends it again by itself."
  },
  "photo_not_an_image": {
    "sentence": "This file is not a picture.",
    "do": "Choose a JPEG, PNG or WebP picture."
  },
  "photo_wrong_type": {
    "sentence": "This picture is {found}, not {told}.",
    "do": "Choose it again."
  },
  "photo_too_many_pixels": {
    "sentence": "This picture has {width} × {height} pixels, too many to open safely.",
    "do": "Choose a smaller one."
  },
  "photo_truncated": {
    "sentence": "This picture is cut short.",
    "do": "Take or choose it again."
  },
  "unreadable": {
    "sentence": "This record could not be read.",
    "do": "It is kept as it came. Export keeps it too."
  },
  "newer_schema": {
    "sentence": "This record was made by a newer app.",
    "do": "Update this one; the record then appears by itself."
  },
  "unknown_kind": {
    "sentence": "This record is of a kind this app does not know.",
    "do": "Update the app; the record then appears by itself."
  },
  "invalid": {
    "sentence": "This record has a field that does not fit.",
    "do": "It is kept as it came; enter it again if it matters."
  },
  "waiting": {
    "sentence": "This record follows one that has not arrived yet.",
    "do": "It appears by itself when the other phone has sent its records."
  },
  "fact": {
    "sentence": "This changes a reading, and readings are never changed.",
    "do": "Weigh again, or enter the correction as a new reading."
  },
  "id_reuse": {
    "sentence": "Two different records came under one name.",
    "do": "Both are kept; look at them and keep the right one."
  },
  "stranger": {
    "sentence": "This record comes from a device that is not in this garage.",
    "do": "Look at it, then take it in or leave it."
  },
  "kind_changed": {
    "sentence": "This record says it is another kind of thing than before.",
    "do": "It is kept as it came; enter it again if it matters."
  },
  "quantity_empty": {
    "sentence": "Nothing is typed here.",
    "do": "Type a {kind}, like {example}."
  },
  "quantity_long": {
    "sentence": "This is too long to be a {kind}.",
    "do": "Type only the number and its unit, like {example}."
  },
  "quantity_unreadable": {
    "sentence": "“{typed}” cannot be read as a {kind}.",
    "do": "Type a number and its unit, like {example}."
  },
  "quantity_comma": {
    "sentence": "The comma in “{typed}” can mean two things: type {instead}.",
    "do": "Write decimals with a point, like 1.25, and thousands without any mark."
  },
  "quantity_exponent": {
    "sentence": "“{typed}” is not written out.",
    "do": "Write the number out in full."
  },
  "quantity_negative": {
    "sentence": "A {kind} cannot be less than nothing.",
    "do": "Type {instead}."
  },
  "quantity_zero": {
    "sentence": "This {kind} cannot be zero.",
    "do": "Type the {kind}, like {example}."
  },
  "quantity_absurd": {
    "sentence": "“{typed}” is more than any car.",
    "do": "Check the number and the unit; the most that is read is {most}."
  },
  "size_unlikely": {
    "sentence": "“{typed}” is no size of a car: here {span} is read.",
    "do": "Look for a slipped unit or digit."
  },
  "quantity_sum": {
    "sentence": "“{typed}” is a sum or a count, not one reading.",
    "do": "Type one reading, like {example}; how many pieces is asked separately."
  },
  "quantity_gap": {
    "sentence": "There is a gap inside the number of “{typed}”.",
    "do": "Type {instead} without the gap."
  },
  "quantity_fraction": {
    "sentence": "The fraction in “{typed}” cannot be read.",
    "do": "Type a whole number, a space and one fraction, like 6 3/8."
  },
  "quantity_unit_missing": {
    "sentence": "“{typed}” lacks a unit.",
    "do": "Type {instead}."
  },
  "quantity_unit_unknown": {
    "sentence": "“{unit}” is not a unit of {kind}.",
    "do": "Type the {kind} in {units}."
  },
  "quantity_unit_unclear": {
    "sentence": "“{unit}” can mean more than one thing.",
    "do": "Type {instead}."
  },
  "quantity_order": {
    "sentence": "The larger unit comes first.",
    "do": "Type {instead}."
  },
  "quantity_mix": {
    "sentence": "{units} do not go together.",
    "do": "Type the {kind} in one unit, like {example}."
  },
  "quantity_two_fractions": {
    "sentence": "Only the last number may have a fraction; “{part}” has one too.",
    "do": "Type a whole number before it, or use one unit."
  },
  "quantity_carry": {
    "sentence": "“{part}” is 1 {large} or more.",
    "do": "Type less than {most} {unit} after the {large}."
  },
  "unreadable_list": {
    "sentence": "{list} is not a list of records; none of it is counted.",
    "do": "Send a list of objects, each with an id."
  },
  "unreadable_record": {
    "sentence": "Record {position} of {list} has no readable id; it is not counted.",
    "do": "Give it an id of up to 80 plain characters."
  },
  "duplicate_record": {
    "sentence": "The id {id} comes twice in {list}; only the first is counted.",
    "do": "Give one of them an id of its own."
  },
  "unknown_field": {
    "sentence": "{id} in {list} has a field {field} that nothing reads.",
    "do": "Check its spelling."
  },
  "unreadable_field": {
    "sentence": "The {field} of {id} in {list} cannot be read; it is left out.",
    "do": "Look at it and enter it again."
  },
  "missing_field": {
    "sentence": "{id} in {list} is not counted: it lacks its {field}.",
    "do": "Enter it."
  },
  "dangling": {
    "sentence": "{id} in {list} speaks of {ref}, which is not there.",
    "do": "It may still come from another phone; else choose again."
  },
  "dangling_deleted": {
    "sentence": "{id} in {list} speaks of {ref}, which was deleted.",
    "do": "Bring that back, or choose another."
  },
  "unknown_car": {
    "sentence": "There is no car {car}; the first one is shown.",
    "do": "Choose one of the garage's cars."
  },
  "unknown_trim": {
    "sentence": "There is no trim {trim}; the road trim is shown.",
    "do": "Choose road or event."
  },
  "not_positive": {
    "sentence": "A weighing comes to nothing or less; it is not counted.",
    "do": "Check which reading was with the part and which without."
  },
  "above_capacity": {
    "sentence": "A reading is above what the scale can weigh.",
    "do": "Weigh it on a larger scale, or correct the scale's capacity."
  },
  "no_mass": {
    "sentence": "Nobody has weighed it yet, or said what it weighs.",
    "do": "Weigh it, or say a guess."
  },
  "unweighed": {
    "sentence": "Some parts have no weight yet and count as nothing.",
    "do": "Weigh them, or say a guess."
  },
  "nothing_to_compare": {
    "sentence": "There is no part to compare this one with.",
    "do": "Say which part it would replace."
  },
  "fuel_unknown": {
    "sentence": "How much fuel was in the tank at this weigh-in is not known.",
    "do": "Note the fuel at the next weigh-in, or correct this one."
  },
  "tank_unknown": {
    "sentence": "The class weighs with a full tank, and the size of the tank is not entered.",
    "do": "Enter it on the car's page."
  },
  "fuel_stated_missing": {
    "sentence": "The class weighs with so much fuel, and how much is not entered.",
    "do": "Enter it on the class sheet."
  },
  "driver_unknown": {
    "sentence": "The car was weighed with a driver whose weight is not known.",
    "do": "Say who it was, and weigh them with their gear."
  },
  "no_driver": {
    "sentence": "The class weighs with the driver, and no driver's weight is known.",
    "do": "Weigh the lightest who will drive, with their gear."
  },
  "no_class_sheet": {
    "sentence": "The class minimum is not entered yet.",
    "do": "Enter it on the class sheet."
  },
  "no_minimum": {
    "sentence": "The class minimum is not entered yet.",
    "do": "Enter it on the class sheet."
  },
  "no_weigh_in": {
    "sentence": "The car has not been weighed yet.",
    "do": "Weigh the whole car."
  },
  "weigh_in_incomplete": {
    "sentence": "A weigh-in lacks a reading and has no total; it is left out.",
    "do": "Weigh the car again, or correct that weigh-in."
  },
  "jobs_not_confirmed": {
    "sentence": "Which jobs were in the car at the weigh-in was not confirmed.",
    "do": "Correct that weigh-in and confirm its jobs."
  },
  "one_weigh_in": {
    "sentence": "It takes two whole weigh-ins to check what is written down.",
    "do": "Weigh the car again."
  },
  "no_start": {
    "sentence": "What the car weighed before the work is not known.",
    "do": "Weigh the car, or enter its book weight."
  },
  "storage_full": {
    "sentence": "This phone has no room left; nothing of this was saved.",
    "do": "Make room on the phone and save again. What you typed is still here."
  },
  "storage_failed": {
    "sentence": "The phone's own store did not take this; nothing of it was saved.",
    "do": "Save again; if it happens again, export everything and reload the app."
  },
  "storage_blocked": {
    "sentence": "Another tab holds the records with an older app.",
    "do": "Close Tarebook's other tabs, then reload this one."
  },
  "storage_newer": {
    "sentence": "The records on this device were written by a newer app.",
    "do": "Reload to get the newer app; nothing was changed."
  },
  "garage_not_open": {
    "sentence": "No garage is open on this device yet; nothing was saved.",
    "do": "Pair this device with the garage first."
  },
  "not_savable": {
    "sentence": "The field {field} does not fit; nothing was saved.",
    "do": "Correct it and save again."
  },
  "unreachable": {
    "sentence": "The home computer does not answer.",
    "do": "It is tried again by itself; until then everything stays here."
  },
  "answer_unreadable": {
    "sentence": "The home computer's answer could not be read.",
    "do": "It is tried again by itself; until then everything stays here."
  },
  "app_older": {
    "sentence": "This app is older than the home computer's, which does not understand it.",
    "do": "Take the new version, under Devices; until then everything stays here, and export keeps it safe."
  },
  "home_older": {
    "sentence": "The home computer's Tarebook is older than this app and does not understand it.",
    "do": "Update it there; until then everything stays here, and export keeps it safe."
  },
  "photo_not_shrunk": {
    "sentence": "This phone could not make the picture small enough.",
    "do": "Save without it, or choose another one."
  },
  "photo_damaged_here": {
    "sentence": "A photo on this phone is damaged and cannot be sent.",
    "do": "Take it again if the thing is still at hand. What was weighed is not touched."
  },
  "pair_refused": {
    "sentence": "The home computer did not let this device in.",
    "do": "If it was meant to, ask there for a fresh code and compare the two words."
  },
  "pair_over": {
    "sentence": "Nobody said yes on the home computer in time, or the wait is over.",
    "do": "Ask there for a fresh code: tarebook pair."
  }
} as const;

type Row = { readonly sentence: string; readonly do: string };
const known: Record<string, Row> = { ...ERRORS };

/** Takes in rows that come with what tells them: the first screen does without. */
export function addErrors(rows: Readonly<Record<string, Row>>): void {
  Object.assign(known, rows);
}

export type ErrorCode = keyof typeof ERRORS | keyof typeof LATER_ERRORS;
export type ErrorData = Record<string, unknown>;
export type Described = { code: ErrorCode; sentence: string; do: string; data: ErrorData };

function fill(text: string, data: ErrorData): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => (name in data ? String(data[name]) : whole));
}

/** The error as every answer of the server carries it. */
export function describe(code: ErrorCode, data: ErrorData = {}): Described {
  const row = known[code] as Row;
  return { code, sentence: fill(row.sentence, data), do: fill(row.do, data), data };
}

export class AppError extends Error {
  readonly code: ErrorCode;
  readonly data: ErrorData;
  readonly sentence: string;
  readonly do: string;

  constructor(code: ErrorCode, data: ErrorData = {}, described = describe(code, data)) {
    super(described.sentence);
    this.name = "AppError";
    this.code = code;
    this.data = data;
    this.sentence = described.sentence;
    this.do = described.do;
  }

  /** Reads `{"error": {code, sentence, do, data}}`, an answer of the server; null when it is something else. */
  static fromBody(body: unknown): AppError | null {
    const error = (body as { error?: Partial<Described> } | null)?.error;
    if (typeof error?.code !== "string") return null;
    const { code, data = {} } = error;
    if (Object.hasOwn(known, code)) return new AppError(code, data);
    // A code this app has no row for brings its own words.
    return typeof error.sentence === "string" ? new AppError(code, data, { do: "", ...error } as Described) : null;
  }
}

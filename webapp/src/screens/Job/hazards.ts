/**
 * Which cautions a job may want, from the words of the trade for what it touches: common practice, no source.
 *
 * A name is read in whole words, the longest group of the table first, and a group's words are used up: a wheel brace
 * is neither a wheel nor a brace. What is proposed is shown at once, and the person says whether it fits.
 */
import { TABLE, type Values } from "../../journal/kinds";
import type { Hazard } from "../../parts/words/cautions";

type Row = {
  of: Hazard[];
  /** In the singular, in lower case, with spaces for all that is no letter. */
  things: string;
  /** What else must, or must not, stand in the name. */
  when?: RegExp;
  unless?: RegExp;
};

const REAR_ALONE = /^(?!.*\b(front|driver|passenger|all|both)\b).*\b(rear|back (seat|belt|bench))\b/;
const ELSEWHERE = /\b(timing|cam|fan|drive|chain|alternator|conveyor) (belt|tensioner|chain)/;
const NO_STRUCTURE = /\b(card|carpet|undertray|cover|cable|hose|foam)s?\b/;
const SHAPED = /\b(cut|cutting|drill|drilled|sand|sanded|sanding|trim|trimmed|ground|grind|to size)\b/;

const TRADE: Row[] = [
  {
    of: [],
    things:
      "wheel brace, wheel spanner, wheel chock, spare wheel, spare wheel well, spare tyre, spare tire, space saver, space saver wheel, " +
      "space saver spare wheel, seat belt cutter, belt cutter, on the cage, seat cover, under the seat, under seat, under the driver s seat, " +
      "under the passenger seat, dash cam, battery charger, key battery, fob battery, jump lead, jumper cable, fuel flap, fuel card, water tank, " +
      "expansion tank, header tank, overflow tank, tyre compressor, tire compressor, air compressor, vanity mirror, make up mirror, " +
      "vanity light, reading light, map light, courtesy light, courtesy lamp, glovebox light, interior light, boot light, " +
      "trunk light, engine bay, engine cover, bonnet prop, bonnet pin, bonnet catch, under bonnet, hood prop, hood pin, window switch, " +
      "window film, glass cloth, glass cleaner, glass polish, hinge spring, return spring, throttle spring, valve spring, gas spring, pedal pad, knee pad, cutting board, inlet manifold, intake manifold, ballast resistor, horn pad, tool battery, gear knob, shift knob, roof rack, bike rack, luggage rack",
  },
  {
    of: ["airbags and tensioners"],
    things: "airbag, air bag, srs, curtain bag, knee bag, side bag, bag inflator, yellow connector, yellow plug, squib",
  },
  {
    of: ["airbags and tensioners"],
    things:
      "steering wheel, steering wheel hub, steering wheel boss, wheel boss, steering column, clock spring, clockspring, dash, " +
      "dashboard, instrument panel, headlining, headliner, roof lining, pillar trim, a pillar, b pillar, c pillar",
  },
  {
    of: ["airbags and tensioners", "seats and belts"],
    things: "tensioner, pretensioner, pre tensioner",
    unless: ELSEWHERE,
  },
  { of: ["airbags and tensioners", "seats and belts"], things: "seat, seat belt, seatbelt", unless: REAR_ALONE },
  { of: ["airbags and tensioners", "seats and belts"], things: "bucket, bucket shell, bucket seat, recliner" },
  {
    of: ["airbags and tensioners", "seats and belts"],
    things: "belt",
    unless: new RegExp(`${REAR_ALONE.source}|${ELSEWHERE.source}`),
  },
  {
    of: ["seats and belts"],
    things:
      "seat, seat belt, seatbelt, belt, bench, seat rail, seat bracket, seat mount, seat heater, child seat, " +
      "child seat anchor, child anchor, isofix, six point, four point",
    unless: ELSEWHERE,
  },
  { of: ["seats and belts"], things: "harness", unless: /\b(wir\w+|stereo|radio|engine|lamp|speaker|electric\w*)\b/ },
  { of: ["battery"], things: "harness", when: /\b(wir\w+|stereo|radio|engine|lamp|speaker|electric\w*)\b/ },
  {
    of: ["lifting"],
    things:
      "wheel, alloys, tyre, tire, rim, wheel nut, wheel bolt, lug nut, wheel stud, hub, upright, knuckle, coilover, spring, damper, shock, strut, " +
      "shock absorber, wishbone, control arm, trailing arm, anti roll bar, sway bar, propshaft, prop shaft, driveshaft, " +
      "drive shaft, half shaft, diff, differential, axle, gearbox, transmission, engine, engine mount, flywheel, sump, oil pan, steering rack, rack, " +
      "heat shield, undertray, skid plate, tow bar, towbar, tow hitch, hitch, wheel arch liner, arch liner, inner arch, underneath, underside, underbody, bonnet, hood, boot lid, " +
      "trunk lid, tailgate, hatch, hardtop, hard top, jack up",
  },
  {
    of: ["lifting", "dust and fibre"],
    things:
      "brake, brake pad, brake shoe, brake disc, brake drum, brake rotor, caliper, disc, rotor, clutch, underseal, underbody coating, " +
      "undercoating, underbody sealant",
  },
  {
    of: ["lifting", "road legality"],
    things:
      "exhaust, exhaust box, exhaust hanger, silencer, muffler, catalyst, catalytic, cat, cat back, sports cat, downpipe, manifold, " +
      "straight pipe, decat, decat pipe, de cat, test pipe, resonator, back box, backbox, tailpipe, handbrake, parking brake",
  },
  { of: ["lifting", "road legality", "dust and fibre"], things: "exhaust wrap, heat wrap" },
  {
    of: ["fuel"],
    things:
      "fuel, fuel pump, fuel filter, petrol, gasoline, petrol can, fuel can, jerry can, filler neck, filler hose, filler pipe, swirl pot, surge tank, charcoal canister, canister, carburettor, carburetor, " +
      "carb, injector, injection, injector rail",
  },
  { of: ["fuel", "lifting"], things: "engine out, engine in, engine swap, engine removed, motor swap" },
  {
    of: ["fuel", "lifting"],
    things:
      "tank, tank strap, fuel tank, gas tank, petrol tank, fuel cell, fuel line, fuel pipe, fuel hose, brake and fuel line",
    unless: /\b(washer|screenwash|oil|air|water) tank/,
  },
  {
    of: ["battery"],
    things:
      "battery, batterie, batt, battery tray, battery box, battery clamp, earth lead, earth strap, isolator, kill switch, cut off switch, cutoff switch, " +
      "alternator, loom, wiring, wiring loom, wiring harness",
    unless: /\b(key|fob|torch|remote|flashlight)\b/,
  },
  { of: ["battery", "lifting"], things: "starter, starter motor" },
  {
    of: ["cutting structure"],
    things:
      "cut, cutting, cut off, cut out, drill, drilled, drilling, weld, welded, welding, chop, chopped, saw, sawn, sawed, hole saw, grind, " +
      "grinding, plasma, notch, notched, bonded, bonded in, plated over",
    unless: NO_STRUCTURE,
  },
  {
    of: ["cutting structure"],
    things: "strut brace, chassis brace, brace, roll bar, crash bar, intrusion bar, cross member, crossmember",
  },
  {
    of: ["cutting structure", "lifting"],
    things: "subframe, sub frame, subframe brace, cradle, roll cage, cage, half cage, rear cage, roll hoop",
  },
  {
    of: ["cutting structure", "road legality"],
    things: "bumper beam, bumper support, bumper bar, bumper reinforcement, bumper bracket, crash beam, impact beam",
  },
  {
    of: ["glass and edges", "road legality"],
    things:
      "glass, window, windscreen, windshield, rear screen, back screen, quarter light, tailgate glass, hatch glass, sunroof, sun roof, " +
      "sunroof glass, glass roof",
  },
  {
    of: ["glass and edges"],
    things:
      "sheet, clear sheet, aluminium sheet, sheet metal, cut down, window regulator, window motor, window winder, power window, electric window",
  },
  {
    of: ["glass and edges"],
    things: "polycarbonate, polycarb, acrylic, perspex",
    unless: /\b(head|tail)? ?(lamp|light|len|lens|lense)s?\b|headlights?|headlamps?/,
  },
  { of: ["ballast"], things: "ballast, ballast plate, lead weight, lead bar, lead plate, lead block, ballast weight" },
  {
    of: ["ballast"],
    things: "lead",
    when: /\b(kg|lb|lbs|kilos?|pounds|moved|bolted|boot|trunk|footwell|floor)\b/,
    unless: /\b(earth|ground|jump|plug|ht|ignition|spark|extension|charg\w+|battery) lead/,
  },
  { of: ["glass and edges"], things: "skin, door skin, inner skin, skinned, door frame", when: SHAPED },
  {
    of: ["refrigerant"],
    things:
      "air conditioning, air conditioner, aircon, air con, a c, ac, climate control, refrigerant, compressor, condenser, evaporator, drier, " +
      "receiver drier, regas, air con line",
  },
  {
    of: ["dust and fibre"],
    things:
      "deadening, sound deadening, deadener, sound proofing, soundproofing, soundproof, insulation, bonnet insulation, hood insulation, " +
      "under bonnet insulation, bonnet liner, felt, tar pad, tar mat, bitumen, bitumen pad, dry ice, asbestos, gasket, seam sealer, glass wool, rock wool",
  },
  {
    of: ["dust and fibre"],
    things: "carbon, carbon fibre, carbon fiber, fibreglass, fiberglass, glass fibre, grp, frp",
    when: SHAPED,
  },
  {
    of: ["road legality"],
    things:
      "mirror, door mirror, wing mirror, fog, fog lamp, fog light, headlight, headlamp, head light, head lamp, headlamp ballast, headlight ballast, lamp ballast, " +
      "lights, rear light, tail light, taillight, side light, brake light, plate light, indicator, reflector, lamp, wiper, washer bottle, washer tank, washer, " +
      "horn, number plate, number plate light, license plate, licence plate, license plate light, visor, sun visor, bumper, speedometer, mudflap, mudguard",
  },
];

/** What the place of a part says about the work: it is under the car, or glass. */
const ZONES: Partial<Record<NonNullable<Values<"part">["zone"]>, Hazard>> = {
  "front wheels": "lifting",
  "rear wheels": "lifting",
  "underneath front": "lifting",
  "underneath rear": "lifting",
  glass: "glass and edges",
};

const BY_THING = new Map<string, Row[]>();
for (const row of TRADE)
  for (const thing of row.things.split(", ")) BY_THING.set(thing, [...(BY_THING.get(thing) ?? []), row]);
const LONGEST = Math.max(...[...BY_THING.keys()].map((thing) => thing.split(" ").length));

/** The hazards of a job by its name and its parts' names and zones, in the table's order. */
export function hazardsOf(name: string, parts: readonly Values<"part">[] = []): Hazard[] {
  const found = new Set([name, ...parts.map((part) => part.name ?? "")].flatMap(touched));
  for (const { zone } of parts) if (zone && ZONES[zone]) found.add(ZONES[zone]);
  return TABLE.job.fields.hazards.of.filter((hazard) => found.has(hazard));
}

function touched(text: string): Hazard[] {
  const whole = inWords(text);
  return text.split(/[,;+&()]/).flatMap((piece) => touchedIn(inWords(piece).split(" "), whole));
}

function touchedIn(words: string[], whole: string): Hazard[] {
  const found: Hazard[] = [];
  for (let at = 0; at < words.length; ) {
    const size = longestAt(words, at);
    for (const { of, when, unless } of size ? rowsOf(words.slice(at, at + size))! : [])
      if ((!when || when.test(whole)) && !unless?.test(whole)) found.push(...of);
    at += size || 1;
  }
  return found;
}

function inWords(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}]+/gu, " ")
    .trim();
}

function longestAt(words: string[], at: number): number {
  for (let size = Math.min(LONGEST, words.length - at); size > 0; size--)
    if (rowsOf(words.slice(at, at + size))) return size;
  return 0;
}

/** As written, or with its last word in the singular. */
function rowsOf(group: string[]): Row[] | undefined {
  const text = group.join(" ");
  return BY_THING.get(text) ?? BY_THING.get(text.replace(/(ch|sh|ss|x)es$/, "$1").replace(/([^s])s$/, "$1"));
}

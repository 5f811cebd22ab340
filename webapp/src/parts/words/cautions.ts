/**
 * The usual cautions, said where a job is chosen. They are the trade's common practice (no source), short on purpose, and each
 * hands over to the rule book, local law or licensed people.
 */
import type { TABLE } from "../../journal/kinds";

export type Hazard = (typeof TABLE.job.fields.hazards.of)[number];

export const CAUTIONS: Record<Hazard, string> = {
  "airbags and tensioners":
    "Airbags and belt tensioners are explosive. Battery off and wait as long as the maker says; only trained people remove, carry or store them, and the law says how they are disposed of.",
  "seats and belts":
    "A seat that lost its belts or child anchors carries nobody who needs them. Harness and seat mountings follow the rule book and their maker's instructions.",
  lifting:
    "Nobody under a car on a jack alone: stands on firm, level ground at the maker's points. Lift heavy parts with two people or a hoist.",
  fuel: "No sparks or flames near fuel and vapour; drain outdoors into a proper can, extinguisher at hand. Have the finished lines checked for leaks.",
  battery:
    "Disconnect the earth lead first and connect it last. Fasten and cover the battery as the rule book asks; acid burns, and a dropped spanner welds.",
  "cutting structure":
    "Cutting or drilling structure can weaken the car in a crash and end its road approval. Check the rule book and ask a licensed workshop before, not after.",
  "glass and edges":
    "Glass and cut sheet slice gloves. Eye protection, cut-proof gloves, sleeves; deburr and cover every edge that stays.",
  ballast:
    "Ballast that comes loose kills. Bolt it through structure as the rule book prescribes, never with straps, tape or glue alone, and have it seen at scrutineering.",
  refrigerant:
    "Air-conditioning refrigerant is under pressure and must not be let out: a licensed workshop recovers it before any joint is opened.",
  "dust and fibre":
    "Old pads, gaskets and underseal can hold asbestos or lead; glass and carbon dust stay in lungs. Do not sand or burn what you do not know; dry ice needs open doors and thick gloves.",
  "road legality":
    "Mirrors, lamps, silencers, visors and glass are part of the road approval. Local law decides whether the car may still be driven on the road.",
};

// Written by `python -m tarebook.contract`. Do not edit.

export type FieldType =
  | "text" | "mass" | "length" | "volume" | "money" | "hours" | "fraction" | "count" | "flag" | "choice"
  | "choices" | "ref" | "refs" | "moment" | "hash" | "integer";
export type Field = { type: FieldType; of: readonly string[]; most: number; required: boolean };
export type Kind = { fact: boolean; fields: Readonly<Record<string, Field>> };

export const SCHEMA = 1;
export const MASS_UNITS = [
  "kg",
  "g",
  "lb",
  "oz",
  "lb oz"
] as const;
export const ZONES = [
  "nose",
  "engine bay",
  "bulkhead",
  "dash",
  "cabin front",
  "cabin rear",
  "left door",
  "right door",
  "roof",
  "glass",
  "floor",
  "boot",
  "tail",
  "front wheels",
  "rear wheels",
  "underneath front",
  "underneath rear"
] as const;
export const HAZARDS = [
  "airbags and tensioners",
  "seats and belts",
  "lifting",
  "fuel",
  "battery",
  "cutting structure",
  "glass and edges",
  "ballast",
  "refrigerant",
  "dust and fibre",
  "road legality"
] as const;

export const KINDS: Readonly<Record<string, Kind>> = {
  "garage": {
    "fact": false,
    "fields": {
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "mass_unit": {
        "type": "choice",
        "of": [
          "kg",
          "g",
          "lb",
          "oz",
          "lb oz"
        ],
        "most": 200,
        "required": false
      },
      "length_unit": {
        "type": "choice",
        "of": [
          "mm",
          "in"
        ],
        "most": 200,
        "required": false
      },
      "volume_unit": {
        "type": "choice",
        "of": [
          "L",
          "gal_us",
          "gal_imp"
        ],
        "most": 200,
        "required": false
      },
      "currency": {
        "type": "text",
        "of": [],
        "most": 8,
        "required": false
      }
    }
  },
  "car": {
    "fact": false,
    "fields": {
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "wheelbase": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "track_front": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "track_rear": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "tyre_radius_front": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "tyre_radius_rear": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "tank_size": {
        "type": "volume",
        "of": [],
        "most": 200,
        "required": false
      },
      "tank_x": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "fuel_kind": {
        "type": "choice",
        "of": [
          "petrol",
          "e85",
          "diesel"
        ],
        "most": 200,
        "required": false
      },
      "driver_x": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "driver_y": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "beltline": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "tank_y": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "tank_z": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "driver_z": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "fuel_per_lap": {
        "type": "volume",
        "of": [],
        "most": 200,
        "required": false
      },
      "length": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "width": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "height": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "front_overhang": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "power": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "power_unit": {
        "type": "choice",
        "of": [
          "kW",
          "hp",
          "PS"
        ],
        "most": 200,
        "required": false
      },
      "roll_front": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "front_from": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "front_to": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "left_from": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "left_to": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "ballast_for": {
        "type": "choice",
        "of": [
          "mass",
          "centre",
          "cross"
        ],
        "most": 200,
        "required": false
      },
      "ballast_more": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "book_weight": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "book_weight_from": {
        "type": "text",
        "of": [],
        "most": 200,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      }
    }
  },
  "scale": {
    "fact": false,
    "fields": {
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "kind": {
        "type": "choice",
        "of": [
          "kitchen",
          "hanging",
          "bathroom",
          "bench",
          "corner_pads",
          "axle_pads",
          "platform"
        ],
        "most": 200,
        "required": true
      },
      "division": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "capacity": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "unit": {
        "type": "choice",
        "of": [
          "kg",
          "g",
          "lb",
          "oz",
          "lb oz"
        ],
        "most": 200,
        "required": false
      },
      "repeatability": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "accuracy_class": {
        "type": "choice",
        "of": [
          "III",
          "IIII"
        ],
        "most": 200,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      }
    }
  },
  "scale_check": {
    "fact": true,
    "fields": {
      "scale": {
        "type": "ref",
        "of": [
          "scale"
        ],
        "most": 200,
        "required": true
      },
      "known_name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": false
      },
      "known": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": true
      },
      "known_within": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "shown": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": true
      },
      "at": {
        "type": "moment",
        "of": [],
        "most": 200,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      },
      "replaces": {
        "type": "ref",
        "of": [
          "scale_check"
        ],
        "most": 200,
        "required": false
      }
    }
  },
  "part": {
    "fact": false,
    "fields": {
      "car": {
        "type": "ref",
        "of": [
          "car"
        ],
        "most": 200,
        "required": false
      },
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "zone": {
        "type": "choice",
        "of": [
          "nose",
          "engine bay",
          "bulkhead",
          "dash",
          "cabin front",
          "cabin rear",
          "left door",
          "right door",
          "roof",
          "glass",
          "floor",
          "boot",
          "tail",
          "front wheels",
          "rear wheels",
          "underneath front",
          "underneath rear"
        ],
        "most": 200,
        "required": false
      },
      "x": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "y": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "z": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "place_within": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "length": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "width": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "count": {
        "type": "count",
        "of": [],
        "most": 1000,
        "required": false
      },
      "whereabouts": {
        "type": "choice",
        "of": [
          "car",
          "shelf",
          "yard",
          "left",
          "sold",
          "scrapped"
        ],
        "most": 200,
        "required": false
      },
      "box": {
        "type": "text",
        "of": [],
        "most": 80,
        "required": false
      },
      "yard": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": false
      },
      "row": {
        "type": "text",
        "of": [],
        "most": 80,
        "required": false
      },
      "asking": {
        "type": "money",
        "of": [],
        "most": 200,
        "required": false
      },
      "sold_for": {
        "type": "money",
        "of": [],
        "most": 200,
        "required": false
      },
      "instead_of": {
        "type": "ref",
        "of": [
          "part"
        ],
        "most": 200,
        "required": false
      },
      "unsprung": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": false
      },
      "rotating": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": false
      },
      "with_bolts": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": false
      },
      "claim": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "claim_basis": {
        "type": "choice",
        "of": [
          "guessed",
          "quoted",
          "worked_out"
        ],
        "most": 200,
        "required": false
      },
      "claim_within": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "claim_from": {
        "type": "text",
        "of": [],
        "most": 200,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      }
    }
  },
  "weighing": {
    "fact": true,
    "fields": {
      "of": {
        "type": "ref",
        "of": [
          "part",
          "driver"
        ],
        "most": 200,
        "required": false
      },
      "what": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": false
      },
      "method": {
        "type": "choice",
        "of": [
          "direct",
          "difference",
          "batch",
          "container",
          "ends"
        ],
        "most": 200,
        "required": true
      },
      "shown": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": true
      },
      "shown_empty": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "shown_far": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "pieces": {
        "type": "count",
        "of": [],
        "most": 1000,
        "required": false
      },
      "scale": {
        "type": "ref",
        "of": [
          "scale"
        ],
        "most": 200,
        "required": false
      },
      "with_bolts": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": false
      },
      "at": {
        "type": "moment",
        "of": [],
        "most": 200,
        "required": false
      },
      "place": {
        "type": "choice",
        "of": [
          "garage",
          "yard",
          "paddock",
          "elsewhere"
        ],
        "most": 200,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      },
      "replaces": {
        "type": "ref",
        "of": [
          "weighing"
        ],
        "most": 200,
        "required": false
      }
    }
  },
  "driver": {
    "fact": false,
    "fields": {
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "claim": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "claim_basis": {
        "type": "choice",
        "of": [
          "guessed",
          "quoted",
          "worked_out"
        ],
        "most": 200,
        "required": false
      },
      "claim_within": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "claim_from": {
        "type": "text",
        "of": [],
        "most": 200,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      }
    }
  },
  "stage": {
    "fact": false,
    "fields": {
      "car": {
        "type": "ref",
        "of": [
          "car"
        ],
        "most": 200,
        "required": false
      },
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "rank": {
        "type": "integer",
        "of": [],
        "most": 10000,
        "required": false
      }
    }
  },
  "job": {
    "fact": false,
    "fields": {
      "car": {
        "type": "ref",
        "of": [
          "car"
        ],
        "most": 200,
        "required": false
      },
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "state": {
        "type": "choice",
        "of": [
          "idea",
          "chosen",
          "fitted",
          "undone"
        ],
        "most": 200,
        "required": false
      },
      "stage": {
        "type": "ref",
        "of": [
          "stage"
        ],
        "most": 200,
        "required": false
      },
      "trim": {
        "type": "choice",
        "of": [
          "both",
          "event"
        ],
        "most": 200,
        "required": false
      },
      "hours": {
        "type": "hours",
        "of": [],
        "most": 200,
        "required": false
      },
      "money": {
        "type": "money",
        "of": [],
        "most": 200,
        "required": false
      },
      "fitted_on": {
        "type": "moment",
        "of": [],
        "most": 200,
        "required": false
      },
      "ruling": {
        "type": "choice",
        "of": [
          "allowed",
          "allowed_if",
          "not_allowed",
          "unclear"
        ],
        "most": 200,
        "required": false
      },
      "clause": {
        "type": "text",
        "of": [],
        "most": 200,
        "required": false
      },
      "hazards": {
        "type": "choices",
        "of": [
          "airbags and tensioners",
          "seats and belts",
          "lifting",
          "fuel",
          "battery",
          "cutting structure",
          "glass and edges",
          "ballast",
          "refrigerant",
          "dust and fibre",
          "road legality"
        ],
        "most": 11,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      }
    }
  },
  "job_part": {
    "fact": false,
    "fields": {
      "job": {
        "type": "ref",
        "of": [
          "job"
        ],
        "most": 200,
        "required": true
      },
      "part": {
        "type": "ref",
        "of": [
          "part"
        ],
        "most": 200,
        "required": true
      },
      "way": {
        "type": "choice",
        "of": [
          "off",
          "on"
        ],
        "most": 200,
        "required": true
      },
      "count": {
        "type": "count",
        "of": [],
        "most": 1000,
        "required": false
      }
    }
  },
  "loose_end": {
    "fact": false,
    "fields": {
      "job": {
        "type": "ref",
        "of": [
          "job"
        ],
        "most": 200,
        "required": true
      },
      "sort": {
        "type": "choice",
        "of": [
          "plug",
          "wire",
          "hole",
          "bolts",
          "other"
        ],
        "most": 200,
        "required": false
      },
      "text": {
        "type": "text",
        "of": [],
        "most": 400,
        "required": true
      },
      "closed": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": false
      }
    }
  },
  "weigh_in": {
    "fact": true,
    "fields": {
      "car": {
        "type": "ref",
        "of": [
          "car"
        ],
        "most": 200,
        "required": false
      },
      "layout": {
        "type": "choice",
        "of": [
          "corners",
          "axles",
          "total"
        ],
        "most": 200,
        "required": true
      },
      "lf": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "rf": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "lr": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "rr": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "front": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "rear": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "total": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "scale": {
        "type": "ref",
        "of": [
          "scale"
        ],
        "most": 200,
        "required": false
      },
      "fuel": {
        "type": "volume",
        "of": [],
        "most": 200,
        "required": false
      },
      "fuel_within": {
        "type": "volume",
        "of": [],
        "most": 200,
        "required": false
      },
      "driver_in": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": false
      },
      "driver": {
        "type": "ref",
        "of": [
          "driver"
        ],
        "most": 200,
        "required": false
      },
      "ballast": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "trim": {
        "type": "choice",
        "of": [
          "road",
          "event"
        ],
        "most": 200,
        "required": true
      },
      "official": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": false
      },
      "jobs": {
        "type": "refs",
        "of": [
          "job"
        ],
        "most": 1000,
        "required": false
      },
      "at": {
        "type": "moment",
        "of": [],
        "most": 200,
        "required": false
      },
      "place": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      },
      "replaces": {
        "type": "ref",
        "of": [
          "weigh_in"
        ],
        "most": 200,
        "required": false
      }
    }
  },
  "lift": {
    "fact": true,
    "fields": {
      "car": {
        "type": "ref",
        "of": [
          "car"
        ],
        "most": 200,
        "required": false
      },
      "weigh_in": {
        "type": "ref",
        "of": [
          "weigh_in"
        ],
        "most": 200,
        "required": true
      },
      "raised": {
        "type": "choice",
        "of": [
          "front",
          "rear"
        ],
        "most": 200,
        "required": true
      },
      "tilted": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": true
      },
      "height": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": true
      },
      "height_within": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "scale": {
        "type": "ref",
        "of": [
          "scale"
        ],
        "most": 200,
        "required": false
      },
      "at": {
        "type": "moment",
        "of": [],
        "most": 200,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      },
      "replaces": {
        "type": "ref",
        "of": [
          "lift"
        ],
        "most": 200,
        "required": false
      }
    }
  },
  "ballast_place": {
    "fact": false,
    "fields": {
      "car": {
        "type": "ref",
        "of": [
          "car"
        ],
        "most": 200,
        "required": false
      },
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "x": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "y": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "z": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "block": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "most": {
        "type": "integer",
        "of": [],
        "most": 1000,
        "required": false
      },
      "fitted": {
        "type": "integer",
        "of": [],
        "most": 1000,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      }
    }
  },
  "sheet": {
    "fact": false,
    "fields": {
      "part": {
        "type": "ref",
        "of": [
          "part"
        ],
        "most": 200,
        "required": true
      },
      "material": {
        "type": "text",
        "of": [],
        "most": 80,
        "required": false
      },
      "form": {
        "type": "choice",
        "of": [
          "rectangle",
          "circle",
          "polygon"
        ],
        "most": 200,
        "required": false
      },
      "width": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "height": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "diameter": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "corners": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      },
      "thickness": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "measured": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": false
      },
      "gauge": {
        "type": "integer",
        "of": [],
        "most": 50,
        "required": false
      },
      "gauge_table": {
        "type": "text",
        "of": [],
        "most": 40,
        "required": false
      },
      "density_low": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "density_high": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "within": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      }
    }
  },
  "sheet_hole": {
    "fact": false,
    "fields": {
      "sheet": {
        "type": "ref",
        "of": [
          "sheet"
        ],
        "most": 200,
        "required": true
      },
      "form": {
        "type": "choice",
        "of": [
          "rectangle",
          "circle",
          "polygon"
        ],
        "most": 200,
        "required": false
      },
      "width": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "height": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "diameter": {
        "type": "length",
        "of": [],
        "most": 200,
        "required": false
      },
      "corners": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      },
      "count": {
        "type": "count",
        "of": [],
        "most": 1000,
        "required": false
      }
    }
  },
  "class_sheet": {
    "fact": false,
    "fields": {
      "car": {
        "type": "ref",
        "of": [
          "car"
        ],
        "most": 200,
        "required": false
      },
      "name": {
        "type": "text",
        "of": [],
        "most": 120,
        "required": true
      },
      "minimum": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "driver": {
        "type": "choice",
        "of": [
          "in",
          "out"
        ],
        "most": 200,
        "required": false
      },
      "fuel": {
        "type": "choice",
        "of": [
          "as_it_is",
          "empty",
          "full",
          "stated"
        ],
        "most": 200,
        "required": false
      },
      "fuel_stated": {
        "type": "volume",
        "of": [],
        "most": 200,
        "required": false
      },
      "adders": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "scale_division": {
        "type": "mass",
        "of": [],
        "most": 200,
        "required": false
      },
      "scale_rounding": {
        "type": "choice",
        "of": [
          "nearest",
          "unknown"
        ],
        "most": 200,
        "required": false
      },
      "risk": {
        "type": "fraction",
        "of": [],
        "most": 200,
        "required": false
      },
      "finish": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      },
      "note": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": false
      }
    }
  },
  "clause": {
    "fact": false,
    "fields": {
      "class_sheet": {
        "type": "ref",
        "of": [
          "class_sheet"
        ],
        "most": 200,
        "required": true
      },
      "reference": {
        "type": "text",
        "of": [],
        "most": 80,
        "required": false
      },
      "text": {
        "type": "text",
        "of": [],
        "most": 4000,
        "required": true
      }
    }
  },
  "photo": {
    "fact": true,
    "fields": {
      "of": {
        "type": "ref",
        "of": [
          "part",
          "weighing",
          "weigh_in",
          "job",
          "loose_end",
          "scale",
          "scale_check",
          "lift"
        ],
        "most": 200,
        "required": true
      },
      "sha256": {
        "type": "hash",
        "of": [],
        "most": 200,
        "required": true
      },
      "size": {
        "type": "integer",
        "of": [],
        "most": 2000000,
        "required": false
      },
      "type": {
        "type": "choice",
        "of": [
          "image/jpeg",
          "image/png",
          "image/webp"
        ],
        "most": 200,
        "required": false
      },
      "width": {
        "type": "integer",
        "of": [],
        "most": 20000,
        "required": false
      },
      "height": {
        "type": "integer",
        "of": [],
        "most": 20000,
        "required": false
      }
    }
  },
  "verdict": {
    "fact": true,
    "fields": {
      "entry": {
        "type": "text",
        "of": [],
        "most": 80,
        "required": true
      },
      "take": {
        "type": "flag",
        "of": [],
        "most": 200,
        "required": true
      }
    }
  }
};

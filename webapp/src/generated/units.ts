// Written by `python -m tarebook.contract`. Do not edit.

export type Kind = "mass" | "length" | "volume";
/** `ratio`: one unit in SI, numerator and denominator. `words`: how people write it. */
export type Unit = {
  ratio: readonly [string, string];
  label: string;
  places: number;
  most_places: number;
  metric: boolean;
  words: readonly string[];
};
export type Dimension = {
  si: string;
  example: string;
  most: readonly [number, string];
  asked: readonly string[];
  smaller: Readonly<Record<string, string>>;
  unclear: Readonly<Record<string, readonly string[]>>;
  units: Readonly<Record<string, Unit>>;
};

export const DIMENSIONS: Readonly<Record<Kind, Dimension>> = {
  "mass": {
    "si": "kg",
    "example": "6 3/8 oz",
    "most": [
      20000,
      "20000 kg"
    ],
    "asked": [
      "kg",
      "g",
      "lb",
      "oz"
    ],
    "smaller": {
      "st": "lb",
      "lb": "oz",
      "kg": "g"
    },
    "unclear": {
      "gr": [
        "g"
      ],
      "ton": [
        "t"
      ],
      "tons": [
        "t"
      ],
      "#": [
        "lb"
      ]
    },
    "units": {
      "kg": {
        "ratio": [
          "1",
          "1"
        ],
        "label": "kg",
        "places": 2,
        "most_places": 5,
        "metric": true,
        "words": [
          "kg",
          "kgs",
          "kilo",
          "kilos",
          "kilogram",
          "kilograms",
          "kilogramme",
          "kilogrammes"
        ]
      },
      "g": {
        "ratio": [
          "1",
          "1000"
        ],
        "label": "g",
        "places": 0,
        "most_places": 2,
        "metric": true,
        "words": [
          "g",
          "gm",
          "gms",
          "gram",
          "grams",
          "gramme",
          "grammes"
        ]
      },
      "t": {
        "ratio": [
          "1000",
          "1"
        ],
        "label": "t",
        "places": 3,
        "most_places": 6,
        "metric": true,
        "words": [
          "t",
          "tonne",
          "tonnes"
        ]
      },
      "lb": {
        "ratio": [
          "45359237",
          "100000000"
        ],
        "label": "lb",
        "places": 2,
        "most_places": 4,
        "metric": false,
        "words": [
          "lb",
          "lbs",
          "pound",
          "pounds"
        ]
      },
      "oz": {
        "ratio": [
          "45359237",
          "1600000000"
        ],
        "label": "oz",
        "places": 1,
        "most_places": 3,
        "metric": false,
        "words": [
          "oz",
          "ozs",
          "ounce",
          "ounces"
        ]
      },
      "st": {
        "ratio": [
          "317514659",
          "50000000"
        ],
        "label": "st",
        "places": 2,
        "most_places": 4,
        "metric": false,
        "words": [
          "st",
          "stone",
          "stones"
        ]
      }
    }
  },
  "length": {
    "si": "m",
    "example": "98 1/4 in",
    "most": [
      100,
      "100 m"
    ],
    "asked": [
      "mm",
      "cm",
      "m",
      "in"
    ],
    "smaller": {
      "ft": "in"
    },
    "unclear": {},
    "units": {
      "mm": {
        "ratio": [
          "1",
          "1000"
        ],
        "label": "mm",
        "places": 0,
        "most_places": 2,
        "metric": true,
        "words": [
          "mm",
          "millimetre",
          "millimetres",
          "millimeter",
          "millimeters"
        ]
      },
      "cm": {
        "ratio": [
          "1",
          "100"
        ],
        "label": "cm",
        "places": 1,
        "most_places": 3,
        "metric": true,
        "words": [
          "cm",
          "centimetre",
          "centimetres",
          "centimeter",
          "centimeters"
        ]
      },
      "m": {
        "ratio": [
          "1",
          "1"
        ],
        "label": "m",
        "places": 3,
        "most_places": 5,
        "metric": true,
        "words": [
          "m",
          "metre",
          "metres",
          "meter",
          "meters"
        ]
      },
      "in": {
        "ratio": [
          "127",
          "5000"
        ],
        "label": "in",
        "places": 2,
        "most_places": 4,
        "metric": false,
        "words": [
          "in",
          "ins",
          "inch",
          "inches",
          "\"",
          "''"
        ]
      },
      "ft": {
        "ratio": [
          "381",
          "1250"
        ],
        "label": "ft",
        "places": 2,
        "most_places": 4,
        "metric": false,
        "words": [
          "ft",
          "foot",
          "feet",
          "'"
        ]
      }
    }
  },
  "volume": {
    "si": "m3",
    "example": "42 L",
    "most": [
      2,
      "2000 L"
    ],
    "asked": [
      "L",
      "gal_us",
      "gal_imp"
    ],
    "smaller": {},
    "unclear": {
      "gal": [
        "gal_us",
        "gal_imp"
      ],
      "gals": [
        "gal_us",
        "gal_imp"
      ],
      "gallon": [
        "gal_us",
        "gal_imp"
      ],
      "gallons": [
        "gal_us",
        "gal_imp"
      ]
    },
    "units": {
      "L": {
        "ratio": [
          "1",
          "1000"
        ],
        "label": "L",
        "places": 1,
        "most_places": 4,
        "metric": true,
        "words": [
          "l",
          "ltr",
          "litre",
          "litres",
          "liter",
          "liters"
        ]
      },
      "ml": {
        "ratio": [
          "1",
          "1000000"
        ],
        "label": "ml",
        "places": 0,
        "most_places": 2,
        "metric": true,
        "words": [
          "ml",
          "millilitre",
          "millilitres",
          "milliliter",
          "milliliters"
        ]
      },
      "gal_us": {
        "ratio": [
          "473176473",
          "125000000000"
        ],
        "label": "US gal",
        "places": 2,
        "most_places": 4,
        "metric": false,
        "words": [
          "us gal",
          "us gals",
          "gal us",
          "gal_us",
          "us gallon",
          "us gallons",
          "gallon us",
          "gallons us"
        ]
      },
      "gal_imp": {
        "ratio": [
          "454609",
          "100000000"
        ],
        "label": "imp gal",
        "places": 2,
        "most_places": 4,
        "metric": false,
        "words": [
          "imp gal",
          "imp gals",
          "gal imp",
          "gal_imp",
          "imp gallon",
          "imp gallons",
          "uk gal",
          "gal uk",
          "imperial gallon",
          "imperial gallons",
          "gallon imp",
          "gallons imp",
          "uk gallon",
          "uk gallons"
        ]
      }
    }
  }
};

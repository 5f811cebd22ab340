"""Reference values that no test runs through the program, each with its reason.

A key of an entry in `fixtures/outside/` that no test looks at must stand here, as "entry key"; so do the reference
values the program has no function for, by entry, which are not in the fixtures at all.
"""

NOT_PLANNED_YET = "the choice of jobs for a target and a budget is not built yet"
NO_RADIO = "the program speaks to no scale by radio"

UNCHECKED = {
    "scale.r60.creep": "the creep of a load cell is its maker's matter; only the finished scale's tolerance counts",
    "wb.minfuel": "a rule for an aircraft's least fuel by its power",
    "scale.hb44.classIII acceptance_div": "holds when a scale is made or mended, not in service",
    "scale.hb44.classIII recommended_min_load_div": "advice on small loads; a car is far above it",
    "scale.nawi.mpe mpe_e": "holds at a scale's first verification, not in service",
    "scale.nawi.mpe min_capacity_e": "advice on small loads; a car is far above it",
    "unc.tri tri": "no input of the program is taken as a triangle",
    "dens.fluids water": "water is weighed as it is, not reckoned from litres",
    "dens.fluids MEG 40 %": "coolant is weighed as it is, not reckoned from litres",
    "dens.fluids MEG 50 % mass in water (coolant) CoolProp INCOMP": "coolant is weighed, not reckoned from litres",
    "fluid.std.amt oil": "oil is weighed as it is, not reckoned from gallons",
    "fluid.std.amt water": "water is weighed as it is, not reckoned from gallons",
    "fluid.std.amt hot_day_avgas_hydrometer": "aviation fuel on a hot day; no car of the program burns it",
    "ds.cars.vega": "a table of other cars; the program compares no car with others",
    "fluid.oil": "oil is weighed as a part, not reckoned from litres",
    "fluid.brake": "brake fluid is weighed as a part, not reckoned from litres; from memory besides",
    "dyn.longLT t_0_100_awd_mu1_s": "a time to a speed; the program reckons no accelerations from grip",
    "opt.P01": NOT_PLANNED_YET,
    "opt.P04": NOT_PLANNED_YET,
    "opt.P06": NOT_PLANNED_YET,
    "opt.ADAGIO1": NOT_PLANNED_YET,
    "opt.WEING1": NOT_PLANNED_YET,
    "opt.P01.prec": NOT_PLANNED_YET,
    "ble.0x2A9D": NO_RADIO,
    "ble.payload.kg": NO_RADIO,
    "mp.defs": "definitions in words, without a number",
    "mp.mga.secondary": "growth allowances for spacecraft; no source could be checked against the standard",
}

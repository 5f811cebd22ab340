"""What does not fit among the weigh-ins, and which single slip in the records would explain it."""

"""Devices: those paired with the garage, and one that asks to join."""

from tarebook.errors.row import at_home, first

# fmt: off
ROWS = {
    "unpaired": first("This device is not paired with the garage.",
        "Pair it with a fresh link from the home computer. Its records stay here.", 401),
    "revoked": first("This device was taken off the garage's list.",
        "Everything is still here: export it, then pair again.", 403),
    "device_unknown": at_home("There is no such device.", "Reload the list of devices.", 404),
    "garage_unknown": at_home("There is no such garage here.", "Check the name with tarebook devices.", 404),
    "pair_code_wrong": at_home("This code or link is wrong, used up or older than five minutes.",
        "Ask the home computer for a fresh one: tarebook pair.", 403),
    "pair_refused": at_home("The home computer did not let this device in.",
        "If it was meant to, ask there for a fresh code and compare the two words.", 403),
    "pair_over": at_home("Nobody said yes on the home computer in time, or the wait is over.",
        "Ask there for a fresh code: tarebook pair.", 403),
    "join_unknown": at_home("That device no longer waits to be let in.", "Let it ask again with a fresh code.", 404),
    "home_only": at_home("Only the home computer itself may do this.",
        "Sit down at it, and open Tarebook there by the address that tarebook serve printed.", 403),
    "no_phone_address": at_home("Phones have no address to reach this computer by yet.",
        "Stop the server and start it with tarebook serve --lan.", 409),
    "device_allowance": at_home("This device has sent {most} entries today, as many as one may.",
        "What it holds stays there and comes in tomorrow. If it is wanted sooner, raise TAREBOOK_DEVICE_ENTRIES on the "
        "home computer; if it is not wanted, take the device off the list.", 429),
    "photo_allowance": at_home("Photos of this device take {most} bytes, as many as one may.",
        "Raise TAREBOOK_DEVICE_PHOTO_BYTES on the home computer if they are wanted. The phone keeps them.", 429),
    "device_nameless": at_home("A device needs a name.", "Type one that tells it from the others.", 422),
    "device_unclear": at_home("Several devices are called {name}.", "Name it by its id, as the list shows it.", 422),
}
# fmt: on

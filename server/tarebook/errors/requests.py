"""What any address of the server may answer a request with."""

from tarebook.errors.row import at_home, first

# fmt: off
ROWS = {
    "bad_request": at_home("The request could not be read.",
        "Reload the app; if it happens again, export and report it.", 400),
    "malformed_json": at_home("What was sent is not readable JSON: {reason}.", "Send one JSON object in UTF-8.", 400),
    "bad_input": at_home("Something sent has the wrong shape.",
        "Look at the fields named in the data and send them as documented.", 422),
    "not_found": at_home("There is nothing at this address.", "Check the address.", 404),
    "head_too_large": at_home("The address of this request, or what comes with it, is longer than any here.",
        "Open the address that tarebook serve printed.", 431),
    "method_not_allowed": at_home("This address does not do that.", "Use one of the methods in the Allow header.", 405),
    "length_required": at_home("The request does not say how long it is.",
        "Send it in one piece, with a Content-Length.", 411),
    "too_large": at_home("That is more than one request may carry.", "Send it in smaller pieces.", 413),
    "unsupported_type": at_home("The request has a content type this address does not take.",
        "Send application/json.", 415),
    "wrong_host": at_home("This server does not answer to that host name.",
        "Open the address that tarebook serve printed.", 421),
    "rate_limited": at_home("Too many wrong codes were tried in a short time.",
        "Wait {seconds} seconds and type it again, or scan the square code: that is heard at once.", 429),
    "calc_over_budget": at_home(
        "This computation takes more than the {seconds} seconds, or the memory, that one may have here.",
        "Ask about less at once, or ask tarebook calc or tarebook report on the home computer: there it takes as long "
        "as it takes.", 422),
    "calc_busy": at_home("Other computations are being done here.", "Ask again in a moment.", 503),
    "broken": first("The server met a fault of its own.",
        "Nothing you saved is lost. Try again; if it happens again, report it.", 500),
    "busy": at_home("The database is busy.", "It will be tried again by itself.", 503),
    "disk_full": at_home("The home computer's disk is full; nothing of this was kept there.",
        "Make room on it. The phone keeps everything until then.", 507),
    "disk_read_only": at_home("The home computer's disk is read-only; nothing of this was kept there.",
        "Check whether it has failed: a system locks a failing disk. The phone keeps everything until then.", 507),
    "store_unwell": at_home("The home computer cannot write to its folder: {reason}.",
        "Check the folder and its disk. The phone keeps everything until then.", 507),
}
# fmt: on

"""The rows of the error table that speak of the home network: its name, its certificates, its ports."""

from __future__ import annotations

from tarebook.error_row import ErrorRow

_INSTALL = "Every phone then has to install it anew, from the door page."

# fmt: off
HOME_NETWORK = {
    "no_network": ErrorRow(500, "This computer is on no home network: it has no private address.",
        "Connect it to your router and start again. Without --lan, tarebook serve needs no network."),
    "clock_wrong": ErrorRow(500, "This computer's clock says {now}, which cannot be.",
        "Set its date and time. Certificates are made and believed by the clock."),
    "name_unusable": ErrorRow(500, "{name} cannot be the permanent name: {reason}.",
        "Choose one like tarebook.local, or a name or private address that your router keeps for this computer."),
    "origin_kept": ErrorRow(500,
        "Devices are paired and {kept} is the address they know; {asked} would be another app to them.",
        "Leave --name and --lan-port out. To move all the same: let every phone send or export its records first, "
        "as those not sent yet stay behind under the old address; then add --move-anyway and pair each phone again."),
    "lan_port_taken": ErrorRow(500, "Port {port}, where phones look for Tarebook, is taken by another program.",
        "Stop that program. Another --lan-port can be chosen freely only before the first phone is paired."),
    "port_forbidden": ErrorRow(500, "This user may not open port {port}.",
        "Choose one above 1023 with {option}."),
    "tls_pair_incomplete": ErrorRow(500, "A certificate and its key belong together; only one of them was named.",
        "Name both: --cert FILE --key FILE."),
    "tls_file_unreadable": ErrorRow(500, "The file {file} cannot be used: {reason}.",
        "Check its name and its permissions. A certificate and a key are text files that begin with -----BEGIN."),
    "tls_key_locked": ErrorRow(500, "The key in {file} is locked with a password.",
        "Give it without one, readable by you only; a server that starts by itself cannot ask for it."),
    "tls_key_other": ErrorRow(500, "The key in {key} does not belong to the certificate in {cert}.",
        "Name the two files that were made together."),
    "tls_name_other": ErrorRow(500, "The certificate in {cert} is for {names}, not for {name}.",
        "Get one for {name}. The name itself cannot change once phones are paired."),
    "tls_expired": ErrorRow(500, "The certificate in {cert} ended on {until}; this computer's clock says {now}.",
        "Renew it; or set the clock, if that is what is wrong."),
    "tls_not_yet": ErrorRow(500, "The certificate in {cert} begins on {since}; this computer's clock says {now}.",
        "Set the clock, if that is what is wrong; else use the certificate that is good now."),
    "authority_missing": ErrorRow(500, "No authority has been made in {folder} yet.",
        "tarebook serve --lan makes one when it needs it."),
    "authority_damaged": ErrorRow(500, "The authority in {folder} cannot be used: {reason}.",
        f"tarebook authority --new makes another one. {_INSTALL}"),
    "authority_exposed": ErrorRow(500, "The authority's key {file} can be read by others on this computer.",
        "Run chmod 600 on it. If somebody else may have read it, run tarebook authority --new instead."),
    "authority_expired": ErrorRow(500, "The authority ended on {until}; this computer's clock says {now}.",
        f"Set the clock, if that is what is wrong; else tarebook authority --new makes another one. {_INSTALL}"),
    "authority_not_yet": ErrorRow(500, "The authority begins on {since}; this computer's clock says {now}.",
        "Set the clock, if that is what is wrong. If it was wrong when the authority was made, tarebook authority "
        f"--new makes another one. {_INSTALL}"),
    "outside_authority": ErrorRow(500, "The authority may not vouch for {name}, only for {allowed}.",
        f"tarebook authority --new makes one for the permanent name. {_INSTALL}"),
}
# fmt: on

"""The home network: its name, its certificates, its ports."""

from tarebook.errors.row import at_home

_INSTALL = "Every phone then has to install it anew, from the door page."

# fmt: off
ROWS = {
    "no_network": at_home("This computer is on no home network: it has no private address.",
        "Connect it to your router and start again. Without --lan, tarebook serve needs no network.", 500),
    "clock_wrong": at_home("This computer's clock says {now}, which cannot be.",
        "Set its date and time. Certificates are made and believed by the clock.", 500),
    "name_unusable": at_home("{name} cannot be the permanent name: {reason}.",
        "Choose one like tarebook.local, or a name or private address that your router keeps for this computer.", 500),
    "origin_kept": at_home(
        "Devices are paired and {kept} is the address they know; {asked} would be another app to them.",
        "Leave --name and --lan-port out. To move all the same: let every phone send or export its records first, as "
        "those not sent yet stay behind under the old address; then add --move-anyway and pair each phone again.", 500),
    "lan_port_taken": at_home("Port {port}, where phones look for Tarebook, is taken by another program.",
        "Stop that program. Another --lan-port can be chosen freely only before the first phone is paired.", 500),
    "port_forbidden": at_home("This user may not open port {port}.", "Choose one above 1023 with {option}.", 500),
    "tls_pair_incomplete": at_home("A certificate and its key belong together; only one of them was named.",
        "Name both: --cert FILE --key FILE.", 500),
    "tls_file_unreadable": at_home("The file {file} cannot be used: {reason}.",
        "Check its name and its permissions. A certificate and a key are text files that begin with -----BEGIN.", 500),
    "tls_key_locked": at_home("The key in {file} is locked with a password.",
        "Give it without one, readable by you only; a server that starts by itself cannot ask for it.", 500),
    "tls_key_other": at_home("The key in {key} does not belong to the certificate in {cert}.",
        "Name the two files that were made together.", 500),
    "tls_name_other": at_home("The certificate in {cert} is for {names}, not for {name}.",
        "Get one for {name}. The name itself cannot change once phones are paired.", 500),
    "tls_expired": at_home("The certificate in {cert} ended on {until}; this computer's clock says {now}.",
        "Renew it; or set the clock, if that is what is wrong.", 500),
    "tls_not_yet": at_home("The certificate in {cert} begins on {since}; this computer's clock says {now}.",
        "Set the clock, if that is what is wrong; else use the certificate that is good now.", 500),
    "authority_missing": at_home("No authority has been made in {folder} yet.",
        "tarebook serve --lan makes one when it needs it.", 500),
    "authority_damaged": at_home("The authority in {folder} cannot be used: {reason}.",
        f"tarebook authority --new makes another one. {_INSTALL}", 500),
    "authority_exposed": at_home("The authority's key {file} can be read by others on this computer.",
        "Run chmod 600 on it. If somebody else may have read it, run tarebook authority --new instead.", 500),
    "authority_expired": at_home("The authority ended on {until}; this computer's clock says {now}.",
        f"Set the clock, if that is what is wrong; else tarebook authority --new makes another one. {_INSTALL}", 500),
    "authority_not_yet": at_home("The authority begins on {since}; this computer's clock says {now}.",
        "Set the clock, if that is what is wrong. If it was wrong when the authority was made, tarebook authority "
        f"--new makes another one. {_INSTALL}", 500),
    "authority_not_taken": at_home("The file {file} holds no authority that can be used here: {reason}.",
        "Name one that tarebook authority --save wrote, and its passphrase. Nothing was changed.", 500),
    "passphrase_missing": at_home("A saved authority needs a passphrase, and there is no terminal to ask for it.",
        "Write it into a file that only you can read, and add --passphrase FILE.", 500),
    "passphrase_short": at_home("A passphrase needs at least {least} characters.",
        "Take four words or more: whoever gets the file may try as long as they like.", 500),
    "passphrase_differs": at_home("The two passphrases are not the same.", "Type it twice alike.", 500),
    "outside_authority": at_home("The authority may not vouch for {name}, only for {allowed}.",
        f"tarebook authority --new makes one for the permanent name. {_INSTALL}", 500),
}
# fmt: on

"""The door page: plain http, because a phone that does not trust us yet can be told in no other way.

It holds the authority's certificate, how to install it, and a check whether it worked; never anything of the garage.
"""

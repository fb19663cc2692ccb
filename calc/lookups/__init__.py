"""Tables to look things up in: `calc.tables` and what follows from `calc.shop`, laid out for readers.

One module a table, each with a LOOKUP; `calc.lookups.catalog` finds them by id.
"""

"""Finding a module by the id of what it declares. Only the module asked for is imported."""


def module_of(room: str, id: str, ids: tuple[str, ...]) -> object:
    """Return the module in a room of `calc` that declares an id.

    Raises:
        ValueError: the id is not in the room's list.
    """
    if id not in ids:
        raise ValueError("nothing in " + room + " is called " + id)
    name = id.replace("-", "_")
    return getattr(getattr(__import__("calc." + room + "." + name), room), name)

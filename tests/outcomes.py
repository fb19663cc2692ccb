"""What tests read out of an outcome."""


def table(outcome, id):
    """Return the lines of one table, each cell by its column."""
    [found] = [each for each in outcome.tables if each.id == id]
    return [dict(zip([column.id for column in found.columns], row, strict=True)) for row in found.rows]

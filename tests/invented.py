"""A calculator made up for a test: what the test says of it, and nothing else."""

from calc.declaring import Calculator


def calculator_of(*groups, id="x", title="X", purpose="For these tests.", results=(), cautions=(), sources=(),
                  example="", compute=None, first=None):
    """Return a calculator of these groups of inputs."""
    return Calculator(id=id, title=title, purpose=purpose, groups=groups, results=results, cautions=cautions,
                      acted_on=(), sources=sources, example=example, compute=compute, first=first)

"""What finish and spray air ask of a product alike: its family, its least temperature, what it gives off."""

from calc.declaring import Input, choice, names_of, quantity
from calc.outcome import (
    STOP,
    WATCH,
    Check,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING
from calc.tables.finish_families import FAMILIES, find

OWN = "own"
"""A product of no family of the table: its sheet says all."""



def family_choice(with_own: bool = False) -> Input:
    """Return the question for the family of finish."""
    own = ((OWN, "Another, by its sheet"),) if with_own else ()
    return choice("family", "Finish", names_of(FAMILIES) + own, default="one-part-urethane")


def least_temperature_input() -> Input:
    """Return the question for the least temperature of the product's sheet."""
    return quantity("least_temperature", "Lowest temperature for the product", "temperature", default="",
                    low="20 °F", high="90 °F", usual=("40 °F", "70 °F"),
                    help="From the maker's sheet. Empty: typical of the family.", optional=True)


def least_temperature(family: str, given: float | None) -> float | None:
    """Return the temperature below which a product is not to be laid on, or None where nobody said.

    Args:
        family: an id of the table of families, or OWN.
        given [degC]: by the maker's sheet, or None.

    Returns:
        [degC] the sheet's figure, else the family's.
    """
    if given is not None or family == OWN:
        return given
    return find(family).least_temperature


def cold_checks(temperature: float, least: float | None, name: str) -> tuple[Check, ...]:
    """Return the stop where air or work is colder than the product needs.

    Args:
        temperature [degC]: of the coldest of air and work.
        least [degC]: that the product needs, or None.
        name: of the product.
    """
    if least is None or temperature >= least - ROUNDING:
        return ()
    return (check("cold", STOP, sentence(
        "{} is colder than the {} that " + name + " needs: it may never cure, however long it is left.",
        amount("temperature", temperature, 1), amount("temperature", least, 1))),)


ISOCYANATE = check(
    "isocyanate", WATCH,
    "Two-part urethane gives off isocyanate while it is sprayed and wet: supplied air, skin and eyes "
    "covered, nobody else near. Without that, choose another finish.")
ONE_PART = check(
    "isocyanate", WATCH,
    "Some one-part urethanes cure by moisture and hold isocyanate. Read section 3 of the data sheet for it, "
    "whatever the tin is called; if it stands there, the tin asks for what two-part urethane asks for: "
    "supplied air, skin and eyes covered, nobody else near.")
FORMALDEHYDE = check(
    "formaldehyde", WATCH,
    "Acid-catalysed lacquer gives off formaldehyde, wet and for days after. Above its limit NIOSH lists "
    "breathing apparatus, or supplied air with a bottle to get out on, and nothing less. Read the data "
    "sheet, and let the bow cure where nobody lives.")
UNKNOWN = check(
    "isocyanate", WATCH,
    "Read section 3 of the product's data sheet for isocyanate and formaldehyde before the tin is open, "
    "whatever it is called.")


def hazard_checks(family: str) -> tuple[Check, ...]:
    """Return what a family gives off that no dust mask holds back."""
    if family == "two-part-urethane":
        return (ISOCYANATE,)
    if family == "one-part-urethane":
        return (ONE_PART,)
    if family == "catalysed-lacquer":
        return (FORMALDEHYDE,)
    if family == OWN:
        return (UNKNOWN,)
    return ()

"""Films of finish: how thick wet and dry, how much to mix, how long they take."""

import math

from calc.checks import require_not_negative, require_positive, require_share


def dry_film_thickness(wet_film_thickness: float, volume_solids: float, reducer: float = 0.0) -> float:
    """Return the film that is left once all that is volatile has gone.

    dry = wet x solids / (1 + R).

    Args:
        wet_film_thickness [m]: as laid down, >= 0.
        volume_solids [1]: of the product as it comes, more than 0, at most 1.
        reducer [1]: volume of reducer per volume of product, >= 0.

    Returns:
        [m] dry film thickness.

    Raises:
        ValueError: an argument is outside its range.

    Source: volume-solids, dry film is wet film times solids.
    """
    require_not_negative("wet film thickness", wet_film_thickness, "m")
    require_share("volume solids", volume_solids)
    require_not_negative("reducer", reducer, "")
    return wet_film_thickness * volume_solids / (1.0 + reducer)


def wet_film_thickness(dry_film_thickness: float, volume_solids: float, reducer: float = 0.0) -> float:
    """Return how wet to lay a coat for a dry film; `dry_film_thickness` read backwards.

    Args:
        dry_film_thickness [m]: wanted, >= 0.
        volume_solids [1]: of the product as it comes, more than 0, at most 1.
        reducer [1]: volume of reducer per volume of product, >= 0.

    Returns:
        [m] wet film thickness.

    Raises:
        ValueError: an argument is outside its range.

    Source: volume-solids, dry film is wet film times solids.
    """
    require_not_negative("dry film thickness", dry_film_thickness, "m")
    require_share("volume solids", volume_solids)
    require_not_negative("reducer", reducer, "")
    return dry_film_thickness * (1.0 + reducer) / volume_solids


def volume_to_mix(area: float, wet_film_thickness: float, transfer_efficiency: float) -> float:
    """Return the mixed volume for one coat, with what misses the work.

    Args:
        area [m^2]: to be coated, >= 0.
        wet_film_thickness [m]: >= 0.
        transfer_efficiency [1]: share of what is used that lands on the work, more than 0, at most 1.

    Returns:
        [m^3] of product and reducer together.

    Raises:
        ValueError: an argument is outside its range.

    Source: volume-solids, surface times wet film over what arrives.
    """
    require_not_negative("area", area, "m2")
    require_not_negative("wet film thickness", wet_film_thickness, "m")
    require_share("transfer efficiency", transfer_efficiency)
    return area * wet_film_thickness / transfer_efficiency


def strip_share(width: float, fan: float) -> float:
    """Return the share of an even spray fan that meets a strip narrower than the fan.

    width / fan, at most 1.

    Args:
        width [m]: of the strip, across the stroke, > 0.
        fan [m]: width of the fan where it meets the strip, > 0.

    Returns:
        [1] share, more than 0, at most 1.

    Raises:
        ValueError: width or fan is not positive.

    Limits:
        A fan that is as thick at its ends as in its middle, held on the middle of the strip. One that is
        thicker in the middle loses less.

    Source: geometry, derived here: two widths.
    """
    require_positive("width", width, "m")
    require_positive("fan", fan, "m")
    return min(1.0, width / fan)


def mean_share(areas: tuple[float, ...], shares: tuple[float, ...]) -> float:
    """Return the share that lands on a whole whose parts take one film at shares of their own.

    sum of areas / sum of (area / share).

    Args:
        areas [m^2]: of the parts, >= 0, their sum > 0.
        shares [1]: what lands on each of `areas`, more than 0, at most 1.

    Returns:
        [1] share, more than 0, at most 1.

    Raises:
        ValueError: an argument is outside its range.

    Source: geometry, derived here: what is sprayed is the sum of what each part takes.
    """
    sprayed = 0.0
    for area, share in zip(areas, shares):
        require_not_negative("area", area, "m2")
        require_share("share", share)
        sprayed += area / share
    require_positive("sum of areas", sum(areas), "m2")
    return sum(areas) / sprayed


def parts_by_volume(
    part_a: float, part_b: float, density_a: float, density_b: float
) -> tuple[float, float]:
    """Return a mixing ratio by volume from one by weight.

    Args:
        part_a [1]: of the base by weight, > 0.
        part_b [1]: of the hardener by weight, >= 0.
        density_a [kg/m^3]: of the base, > 0.
        density_b [kg/m^3]: of the hardener, > 0.

    Returns:
        parts of base and hardener by volume, the base's as it was given.

    Raises:
        ValueError: an argument is outside its range.

    Source: geometry, volume is mass over density.
    """
    require_positive("part a", part_a, "")
    require_not_negative("part b", part_b, "")
    require_positive("density a", density_a, "kg/m3")
    require_positive("density b", density_b, "kg/m3")
    return part_a, part_b * density_a / density_b


def mixed_volumes(
    volume: float, part_a: float, part_b: float, reducer: float
) -> tuple[float, float, float]:
    """Return what to measure out for a volume that is ready to lay on.

    Args:
        volume [m^3]: of base, hardener and thinner together, >= 0.
        part_a [1]: of the base by volume, > 0.
        part_b [1]: of the hardener by volume, >= 0.
        reducer [1]: volume of thinner per volume of base and hardener together, >= 0.

    Returns:
        [m^3] base, hardener and thinner; their sum is the volume, if nothing shrinks on mixing.

    Raises:
        ValueError: an argument is outside its range.

    Source: geometry, parts of a whole.
    """
    require_not_negative("volume", volume, "m3")
    require_positive("part a", part_a, "")
    require_not_negative("part b", part_b, "")
    require_not_negative("reducer", reducer, "")
    product = volume / (1.0 + reducer)
    base = product * part_a / (part_a + part_b)
    return base, product - base, volume - product


def solvent_in(volume: float, volume_solids: float, reducer: float) -> float:
    """Return what evaporates from a volume that is ready to lay on.

    volume (1 - solids / (1 + R)).

    Args:
        volume [m^3]: of product and reducer together, >= 0.
        volume_solids [1]: of the product as it comes, more than 0, at most 1.
        reducer [1]: volume of reducer per volume of product, >= 0.

    Returns:
        [m^3] of liquid.

    Raises:
        ValueError: an argument is outside its range.

    Source: volume-solids, what is not solids goes.
    """
    require_not_negative("volume", volume, "m3")
    require_share("volume solids", volume_solids)
    require_not_negative("reducer", reducer, "")
    return volume * (1.0 - volume_solids / (1.0 + reducer))


def coverage(dry_film_thickness: float, volume_solids: float) -> float:
    """Return the area that a volume of product covers, without loss.

    Args:
        dry_film_thickness [m]: > 0.
        volume_solids [1]: more than 0, at most 1.

    Returns:
        [m^2/m^3] area per volume of product as it comes.

    Raises:
        ValueError: an argument is outside its range.

    Source: volume-solids, surface times film is volume.
    """
    require_positive("dry film thickness", dry_film_thickness, "m")
    require_share("volume solids", volume_solids)
    return volume_solids / dry_film_thickness


def bow_surface(
    bow_length: float, riser_length: float, riser_girth: float, width_fadeout: float, width_tip: float,
    thickness: float,
) -> float:
    """Return the surface of a bow: two limbs that taper in width, and a riser by its girth.

    limbs: (length - riser) x 2 (mean width + thickness); riser: length x girth.

    Args:
        bow_length [m]: along the back from nock to nock, more than riser_length.
        riser_length [m]: between the fadeouts, >= 0.
        riser_girth [m]: mean distance round the riser, >= 0.
        width_fadeout [m]: of a limb at its fadeout, > 0.
        width_tip [m]: of a limb at its tip, > 0.
        thickness [m]: mean of a limb, > 0.

    Returns:
        [m^2] surface.

    Raises:
        ValueError: a length is outside its range.

    Source: geometry, derived here: limbs as trapezia with their edges.
    """
    require_not_negative("riser length", riser_length, "m")
    require_not_negative("riser girth", riser_girth, "m")
    require_positive("width at the fadeout", width_fadeout, "m")
    require_positive("width at the tip", width_tip, "m")
    require_positive("thickness", thickness, "m")
    if bow_length <= riser_length:
        raise ValueError("bow length must be more than riser length, got " + str(bow_length) + " m and "
                         + str(riser_length) + " m")
    girth = 2.0 * ((width_fadeout + width_tip) / 2.0 + thickness)
    return (bow_length - riser_length) * girth + riser_length * riser_girth


def time_factor_doubling(temperature: float, reference: float, step: float) -> float:
    """Return how many times longer drying takes than at the reference, by the doubling rule.

    2^((reference - temperature) / step).

    Args:
        temperature [degC]: of air and work.
        reference [degC]: for which the times are stated.
        step [K]: by how much colder the time doubles, > 0; 10 in the rule.

    Returns:
        [1] factor on the time, > 0.

    Raises:
        ValueError: step is not positive.

    Limits:
        A rule of thumb between about 10 and 35 degC. Below its least temperature a product may not cure at
        all, however long it is left.

    Source: cure-doubling, a factor of two for each 10 °C.
    """
    require_positive("step", step, "K")
    return math.pow(2.0, (reference - temperature) / step)

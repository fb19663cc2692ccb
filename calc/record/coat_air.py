"""The air that was read for a coat: whether it is too cold, too damp, or the work too near the dew point."""

from calc.outcome import OK, STOP, WATCH
from calc.quantities import ROUNDING
from calc.record.entries import Entry
from calc.record.values import number_in
from calc.shop.air import IMPERIAL_MARGIN, METRIC_MARGIN, dew_point
from calc.tables import practice

DAMPEST: float = practice.find("spray-humidity").high
FAR = float("inf")


class CoatAir:
    """What an entry says of the air and of the work in it. What was not read is not held against a coat.

    is_read: whether warmth and humidity of the air are both there. coldest [degC]: the colder of air and
    work. humidity [ratio]: relative. margin [K]: of the work above the dew point, the work as warm as the air
    where it was not read.
    """

    def __init__(self, entry: Entry):
        air, work = number_in(entry, "temperature"), number_in(entry, "surface_temperature")
        humidity = number_in(entry, "humidity")
        self.is_read = air is not None and humidity is not None
        self.coldest = min([FAR if each is None else each for each in (air, work)])
        self.humidity = 0.0 if humidity is None else humidity
        self.margin = FAR if air is None or humidity is None else (
            (air if work is None else work) - dew_point(air, humidity))

    def is_colder_than(self, least: float) -> bool:
        """Return whether air or work is colder than a product needs; least [degC]."""
        return self.coldest < least - ROUNDING

    @property
    def is_too_damp(self) -> bool:
        """Return whether the air is damper than practice allows for spraying."""
        return self.humidity > DAMPEST + ROUNDING

    @property
    def margin_level(self) -> str:
        """Return OK where both published rules of the dew point are met, WATCH where one is, else STOP."""
        if self.margin >= METRIC_MARGIN - ROUNDING:
            return OK
        return WATCH if self.margin >= IMPERIAL_MARGIN - ROUNDING else STOP

"""Dew point by air temperature and relative humidity, in degrees Celsius."""

from calc.lookups.dew_point import dew_point_grid

LOOKUP = dew_point_grid("dew-point-celsius", "metric", (10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 35))

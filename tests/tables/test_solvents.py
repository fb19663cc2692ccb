"""Solvents against a reference library of chemical data."""

import chemicals
import pytest
from chemicals.volume import rho_data_VDI_PPDS_2

from calc.tables.solvents import find

ROOM = 293.15  # [K]
REGISTRY_NUMBERS = {
    "acetone": "67-64-1", "toluene": "108-88-3", "xylene": "108-38-3", "butyl-acetate": "123-86-4",
    "isobutyl-acetate": "110-19-0", "ethyl-acetate": "141-78-6", "mek": "78-93-3", "isopropanol": "67-63-0",
    "ethanol": "64-17-5", "methanol": "67-56-1", "butanol": "71-36-3",
}
WITH_DENSITY = [id for id in REGISTRY_NUMBERS if REGISTRY_NUMBERS[id] in rho_data_VDI_PPDS_2.index]


@pytest.mark.parametrize("id", REGISTRY_NUMBERS)
def test_molar_mass(id):
    # The library chemicals, by registry number.
    assert find(id).molar_mass * 1000 == pytest.approx(chemicals.MW(REGISTRY_NUMBERS[id]), abs=0.012)


@pytest.mark.parametrize("id", WITH_DENSITY)
def test_density_at_room_temperature(id):
    # VDI Heat Atlas, saturated liquid densities, as the library chemicals has its coefficients.
    row = rho_data_VDI_PPDS_2.loc[REGISTRY_NUMBERS[id]]
    below = 1 - ROOM / row["Tc"]
    density = row["rhoc"] + sum(row[name] * below**power for name, power in
                                (("A", 0.35), ("B", 2 / 3), ("C", 1), ("D", 4 / 3)))
    assert find(id).density == pytest.approx(density, rel=0.003)

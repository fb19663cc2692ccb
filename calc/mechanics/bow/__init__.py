"""Two limbs on a riser: how they bend, balance, and change as they are thinned.

`Limb` and `Bow` are the way in; the modules beside them hold what is computed with these.
"""

from calc.mechanics.bow.bow import Bow, Braced, Drawn, Tiller
from calc.mechanics.bow.elastica import Limb

__all__ = ["Bow", "Braced", "Drawn", "Limb", "Tiller"]

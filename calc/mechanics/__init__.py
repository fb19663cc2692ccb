"""How bows, limbs and shafts carry load. No user interface words."""

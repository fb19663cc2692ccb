"""Cautions that belong to every job on a limb."""

GLASS_DUST = (
    "Glass dust harms lungs and skin: wet sanding or extraction, a fitting respirator, gloves, long sleeves.")

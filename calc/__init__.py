"""Bench arithmetic and bow mechanics for restoring glass-laminated bows."""

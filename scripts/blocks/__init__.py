"""Blocks of the book that are made from the calculators' declarations."""

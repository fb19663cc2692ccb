"""Figures of the book that are drawn from computed curves."""

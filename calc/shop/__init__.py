"""Bench arithmetic from published standards."""

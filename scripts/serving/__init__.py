"""Handing out the built site."""

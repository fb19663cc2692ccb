"""Small SVG drawings made from results."""

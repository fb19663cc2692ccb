"""Draw the computed figures: `.venv/bin/python -m scripts.figures`. A test holds them to the model."""

from pathlib import Path

from scripts.figures.benchmark import benchmark
from scripts.figures.bends import bends
from scripts.figures.drawing import drawing
from scripts.figures.edges import edges
from scripts.figures.elastica import elastica
from scripts.figures.stringing import stringing
from scripts.figures.stroke import stroke

IMAGES = Path(__file__).parents[2] / "docs/assets/images"
FIGURES = {"model-benchmark.svg": benchmark, "model-elastica.svg": elastica,
           "limb-bends.svg": bends, "limbs-through-the-draw.svg": drawing, "edge-profiles.svg": edges,
           "stringing-moving.svg": stringing, "stroke-path.svg": stroke}

if __name__ == "__main__":
    for name, draw in FIGURES.items():
        (IMAGES / name).write_text(draw(), "utf-8")

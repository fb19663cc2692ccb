"""Draw the comparison plots: `.venv/bin/python -m scripts.figures`. A test holds them to the model."""

from pathlib import Path

from scripts.figures.benchmark import benchmark
from scripts.figures.elastica import elastica

IMAGES = Path(__file__).parents[2] / "docs/assets/images"
FIGURES = {"model-benchmark.svg": benchmark, "model-elastica.svg": elastica}

if __name__ == "__main__":
    for name, draw in FIGURES.items():
        (IMAGES / name).write_text(draw(), "utf-8")

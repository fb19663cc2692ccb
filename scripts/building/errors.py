"""What stops a build."""


class BuildError(Exception):
    """A fault in the site's sources, in a sentence for whoever builds it."""

"""One profile for every property: the same examples each time, and no clock."""

from hypothesis import settings

settings.register_profile("house", derandomize=True, deadline=None, print_blob=False)
settings.load_profile("house")

"""What the tests of the core share."""

from hypothesis import settings

# No deadline: the first call of many a function imports scipy, and a busy machine is not a fault.
settings.register_profile("core", deadline=None)
settings.load_profile("core")

"""A failing property is tried thousands of times, and every traceback is a ring: garbage is collected meanwhile."""

import gc

import pytest


@pytest.fixture(autouse=True)
def _collect_garbage(_garbage):
    gc.enable()
    yield
    gc.disable()

"""Every piece is a closed solid of the volume drawn, and an independent library finds its nominal lengths on it."""

import numpy as np
import pytest
import trimesh

from core.pieces.catalogue import plan_set, set_names
from core.pieces.solid import solids_of
from tests.core.pieces.onmesh import bounds_for, volume_mm3, walls_along

every_set = pytest.mark.parametrize("key", set_names())


def meshes_of(planned):
    return [trimesh.Trimesh(s.corners_mm, s.triangles, process=False) for s in solids_of(planned)]


@every_set
def test_it_is_closed_one_body_each_and_of_the_volume_drawn(key):
    planned = plan_set(key, bounds_for(key))
    for solid, mesh, volume in zip(solids_of(planned), meshes_of(planned), volume_mm3(planned), strict=True):
        assert mesh.is_watertight and mesh.is_winding_consistent and mesh.body_count == 1
        assert mesh.volume == pytest.approx(volume, rel=1e-7)
        assert solid.volume_mm3 == pytest.approx(mesh.volume, rel=1e-12)
        assert mesh.bounds[0].min() >= -1e-9 and mesh.bounds[0][2] == 0.0


@every_set
def test_its_nominal_lengths_are_found_on_the_mesh(key):
    """At both jaws stands a wall, and material lies on the right side of it."""
    planned = plan_set(key, bounds_for(key))
    places, meshes = iter(planned.places()), meshes_of(planned)
    for piece, mesh in zip(planned.pieces, meshes, strict=True):
        for gauge in piece.gauges:
            first, second = next(places)
            walls = walls_along(mesh, first, second)
            for jaw, outward in ((0.0, -1), (gauge.nominal_mm, +1)):
                assert np.min(np.abs(walls - jaw)) < 1e-6, (gauge.name, walls)
                just_outside = jaw + outward * 0.05
                in_material = np.sum(walls < just_outside) % 2 == 1
                assert in_material == gauge.inside, gauge.name


def test_the_picture_body_is_the_same_without_the_stepped_edge():
    planned = plan_set("comb_x")
    (plain,), (stepped,) = solids_of(planned, relieved=False), solids_of(planned)
    assert len(plain.triangles) < len(stepped.triangles) and plain.volume_mm3 > stepped.volume_mm3

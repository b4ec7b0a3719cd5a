"""Stage: person and room in front of the camera, rendered frame by frame with PyVista."""

from typing import Any

import numpy as np
from numpy.typing import NDArray

from sample_clips.body import Body
from sample_clips.lens import VirtualLens
from sample_clips.room import Room, room_of
from sample_clips.skeleton import PosedBones, Skin
from sample_clips.wardrobe import dress, outfit_of

FloatArray = NDArray[np.float64]
RgbImage = NDArray[np.uint8]
#: Colour that stands for "nobody here" while the people are rendered alone.
_KEY = "#ff00ff"
_KEY_PIXEL = np.array([255, 0, 255], dtype=np.uint8)


class SceneRenderer:
    """Everything in front of the camera, ready to be rendered frame by frame."""

    def __init__(self, room_seed: int, lens: VirtualLens, *, with_shadow: bool) -> None:
        import pyvista

        self.room = room_of(room_seed)
        self._lens = lens
        self._plotter = pyvista.Plotter(
            off_screen=True, window_size=[lens.width, lens.height], lighting="none"
        )
        self._plotter.disable_anti_aliasing()
        self._bent = lens.source_pixels()
        furniture = self._build_room(self.room, with_shadow)
        self._light(self.room)
        self._stand_camera()
        # The room does not change: it is rendered once, the people alone for every frame.
        self._empty = self._render()
        for actor in furniture:
            actor.SetVisibility(False)
        self._plotter.set_background(_KEY)
        self._bodies: dict[int, tuple[Any, Skin]] = {}

    def add(self, key: int, body: Body, seed: int, loose_m: float) -> None:
        """Bring a dressed body on stage."""
        import pyvista

        dressed = dress(body, outfit_of(seed), loose_m, seed)
        vertices = body.vertices + body.normals * dressed.offsets_m[:, None]
        faces = np.column_stack([np.full(len(body.triangles), 3), body.triangles])
        mesh = pyvista.PolyData(vertices.astype(np.float32), faces.ravel())
        mesh.point_data["colour"] = (dressed.colours * 255).astype(np.uint8)
        mesh.point_data.active_normals = body.normals.astype(np.float32)
        self._plotter.add_mesh(
            mesh,
            scalars="colour",
            rgb=True,
            interpolation="Gouraud",
            ambient=self.room.ambient,
            diffuse=0.75,
            specular=0.06,
            specular_power=12,
        )
        self._bodies[key] = (mesh, Skin(body, vertices, body.normals))

    def move(self, key: int, bones: PosedBones, away: FloatArray | None = None) -> None:
        """Pose a body that is on stage; ``away`` shifts it, shape (3,)."""
        mesh, skin = self._bodies[key]
        vertices, normals = skin.pose(bones)
        if away is not None:
            vertices = vertices + away
        lengths = np.linalg.norm(normals, axis=1, keepdims=True)
        mesh.points[:] = vertices.astype(np.float32)
        mesh.point_data.active_normals[:] = (normals / np.maximum(lengths, 1e-9)).astype(np.float32)
        mesh.Modified()

    def picture(self) -> RgbImage:
        """Render, shape (height, width, 3)."""
        people = self._render()
        red, green, blue = (people[:, :, band] == _KEY_PIXEL[band] for band in range(3))
        straight = people.copy()
        np.copyto(straight, self._empty, where=(red & green & blue)[:, :, None])
        if self._bent is None:
            return straight
        return np.ascontiguousarray(straight.reshape(-1, 3)[self._bent])

    def _render(self) -> RgbImage:
        self._plotter.render()
        return np.asarray(self._plotter.screenshot(return_img=True), dtype=np.uint8)

    def close(self) -> None:
        self._plotter.close()

    def _build_room(self, room: Room, with_shadow: bool) -> list[Any]:
        import pyvista

        actors = [
            self._plotter.add_mesh(
                pyvista.Box(bounds=box.bounds), color=box.colour, ambient=0.5, diffuse=0.7
            )
            for box in room.boxes
        ]
        if with_shadow:
            disc = pyvista.Disc(center=(0, 0.05, 0.004), inner=0, outer=0.42, r_res=1, c_res=40)
            actors.append(self._plotter.add_mesh(disc, color="black", opacity=0.25, lighting=False))
        return actors

    def _light(self, room: Room) -> None:
        import pyvista

        for direction, strength in (
            (room.lamp, room.lamp_strength),
            ((0.2, -3.0, 0.4), room.fill_strength),
        ):
            light = pyvista.Light(
                position=direction,
                focal_point=(0, 0, 0),
                intensity=strength,
                light_type="scene light",
            )
            light.positional = False
            self._plotter.add_light(light)

    def _stand_camera(self) -> None:
        camera, lens = self._plotter.camera, self._lens
        camera.position = tuple(lens.position)
        camera.focal_point = tuple(lens.position + lens.axes[2])
        camera.up = tuple(-lens.axes[1])
        camera.view_angle = lens.vertical_deg
        camera.clipping_range = (0.1, 20.0)

"""Where a camera sees points of the wall: its poses, its lens, how each sheet lies, and the slopes of all that.

The lens is the usual model of five coefficients (D. C. Brown, Close-range camera calibration, 1971; three of them
radial, two tangential), with smooth polynomials for what it does not hold.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.record import Record, replace
from templates_gen.photo.scene import Scene
from templates_gen.photo.vision import Array, np, rotation

OF_POSE, OF_LENS, OF_SHEET = 6, 9, 3
"""Numbers of a pose, of lens and print, and of a sheet."""

ASPECT = 8
"""Where in `lens` the print's stretch along against across is."""

POSE_STEPS = (1e-6,) * 3 + (1e-2,) * 3
LENS_STEPS = (1e-5, 1e-2, 1e-2, 1e-5, 1e-5, 1e-5, 1e-6, 1e-6, 1e-6)
"""Over how much of each of these numbers a slope is taken (radians, mm, and pixels of the lens's middle)."""

NEAR = 0.01
"""mm of the wall over which a slope is taken."""


class State(Record, frozen=True):
    """One guess of everything.

    `turns` and `shifts` are the poses of the pictures; `lens` holds log focal length, centre, k1 to k3, p1, p2 and the
    print's aspect; `sheets` dx, dy (mm) and turn (radians) of each sheet; `heights` how far each tag is off the wall
    (mm); `rest` the coefficients of the polynomials.
    """

    turns: Array
    shifts: Array
    lens: Array
    sheets: Array
    heights: Array
    rest: Array


def on_wall(scene: Scene, state: State) -> Array:
    """The corners of every tag from the middle of all sheets, with their height off the wall (mm)."""
    own, stretch = state.sheets[scene.sheet], np.array([1.0, 1.0 + state.lens[ASPECT]])
    c, s = np.cos(own[:, 2])[:, None], np.sin(own[:, 2])[:, None]
    x, y = np.moveaxis(scene.on_sheet * stretch, -1, 0)
    flat = np.stack([c * x - s * y, s * x + c * y], -1) + (scene.middle * stretch + own[:, :2])[:, None]
    return np.concatenate([flat, np.repeat((state.heights + scene.stands)[scene.tag][:, None, None], 4, 1)], -1)


def seen_at(scene: Scene, state: State, points: Array) -> Array:
    """The pixels of points of the wall, a row for each tag, without the polynomials."""
    turns, shifts = state.turns[scene.view], state.shifts[scene.view]
    away = np.einsum("nij,nkj->nki", turns, points) + shifts[:, None]
    return pixels_of(away, state.lens, scene.focal, scene.size)


def pixels_of(away: Array, lens: Array, focal: float, size: tuple[int, int]) -> Array:
    """Where points before a camera (its own axes) are on the picture."""
    x, y = away[..., 0] / away[..., 2], away[..., 1] / away[..., 2]
    _, cx, cy, k1, k2, k3, p1, p2 = lens[:8]
    r = x * x + y * y
    radial = 1 + r * (k1 + r * (k2 + r * k3))
    bent = x * radial + 2 * p1 * x * y + p2 * (r + 2 * x * x), y * radial + p1 * (r + 2 * y * y) + 2 * p2 * x * y
    f = focal * np.exp(lens[0])
    return np.stack([bent[0] * f + (size[0] - 1) / 2 + cx, bent[1] * f + (size[1] - 1) / 2 + cy], -1)


def slopes(scene: Scene, state: State, points: Array, smooth: bool) -> Array:
    """How the pixels of every corner change with every number, in the order of `moved`."""
    rows, count = len(scene.seen), np.arange(len(scene.seen))
    sheets, tags = len(scene.sheets), len(scene.tags)
    from_lens = OF_POSE * scene.views
    from_sheets = from_lens + OF_LENS
    from_heights = from_sheets + OF_SHEET * sheets
    from_rest = from_heights + tags
    found = np.zeros((rows, 4, 2, from_rest + (2 * scene.basis.shape[-1] if smooth else 0)))
    by_point = _by_point(scene, state, points)
    for column, slope in enumerate(_by_pose(scene, state, points)):
        found[count, :, :, OF_POSE * scene.view + column] = slope
    for column, slope in enumerate(_by_lens(scene, state, points)):
        found[..., from_lens + column] = slope
    from_middle = scene.on_sheet[..., 1] + scene.middle[:, None, 1]
    found[..., from_lens + ASPECT] = by_point[1] * from_middle[..., None]
    own = points[..., :2] - (scene.middle * [1, 1 + state.lens[ASPECT]] + state.sheets[scene.sheet, :2])[:, None]
    turning = -own[..., 1:] * by_point[0] + own[..., :1] * by_point[1]
    for column, slope in enumerate((by_point[0], by_point[1], turning)):
        found[count, :, :, from_sheets + OF_SHEET * scene.sheet + column] = slope
    found[count, :, :, from_heights + scene.tag] = by_point[2]
    if smooth:
        found[:, :, 0, from_rest::2] = scene.basis
        found[:, :, 1, from_rest + 1 :: 2] = scene.basis
    return found


def _by_point(scene: Scene, state: State, points: Array) -> list[Array]:
    steps = np.eye(3) * NEAR
    return [(seen_at(scene, state, points + e) - seen_at(scene, state, points - e)) / (2 * NEAR) for e in steps]


def _by_pose(scene: Scene, state: State, points: Array) -> Iterator[Array]:
    for column, step in enumerate(POSE_STEPS):
        change = np.zeros((scene.views, OF_POSE))
        change[:, column] = step
        ahead, back = (seen_at(scene, _posed(state, sign * change), points) for sign in (1, -1))
        yield (ahead - back) / (2 * step)


def _by_lens(scene: Scene, state: State, points: Array) -> Iterator[Array]:
    for column, step in enumerate(LENS_STEPS[:ASPECT]):
        change = np.zeros(OF_LENS)
        change[column] = step
        ahead, back = (
            seen_at(scene, replace(state, lens=state.lens + sign * change), points) for sign in (1, -1)
        )  # fmt: skip
        yield (ahead - back) / (2 * step)


def _posed(state: State, change: Array) -> State:
    turns = np.array([rotation(one[:3]) @ turn for one, turn in zip(change, state.turns, strict=True)])
    nearer = change[:, 5:] / state.shifts[:, 2:]
    shifts = state.shifts * (np.exp(nearer) - nearer) + change[:, 3:]
    return replace(state, turns=turns, shifts=shifts)


def moved(state: State, step: Array) -> State:
    """The state after a step in all numbers: poses, lens, sheets, heights, polynomials."""
    at = OF_POSE * len(state.turns)
    posed = _posed(state, step[:at].reshape(-1, OF_POSE))
    sheets = at + OF_LENS + state.sheets.size
    heights = sheets + len(state.heights)
    return replace(
        posed,
        lens=state.lens + step[at : at + OF_LENS],
        sheets=state.sheets + step[at + OF_LENS : sheets].reshape(-1, OF_SHEET),
        heights=state.heights + step[sheets:heights],
        rest=state.rest + step[heights:].reshape(-1, 2) if len(step) > heights else state.rest,
    )

"""One least-squares fit of cameras, lens and sheets to all tags, with what is usual of each, and robust to strays.

How far sheets lie off, how far paper stands off the wall, and how exactly tags are seen is estimated from the picture
itself, in rounds.  The first widths below are our own simulation, no source.
"""

from __future__ import annotations

from templates_gen.base.record import Record, replace
from templates_gen.photo.camera import OF_LENS, OF_POSE, OF_SHEET, State, moved, on_wall, seen_at, slopes
from templates_gen.photo.scene import Scene
from templates_gen.photo.vision import OF_CORNERS, Array, flat_pose, np

LENS_WIDTHS = (20.0, 20.0, 0.06, 0.06, 0.05, 0.001, 0.001, 0.002)
"""How far the numbers of the lens after the focal length usually are from none: its centre by 20 pixels."""

SMOOTH = 0.2
"""Pixels of what the polynomials usually hold."""

NORMAL = 1.96
"""The 95 % of a normal distribution, in deviations."""

STUDENT = (NORMAL**2 + 1) / 4
"""By how much more Student's t reaches than a normal distribution where so many numbers are free: 1 + this / free (the
first term of the usual expansion: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.7.5)."""

ROUNDS, STEPS, FIRST_STEPS = 6, 4, 12
"""Rounds of a fit, and the steps of a round and of the first one."""

STRAY, LEAST_CORNER = 3.0, 0.02
"""Tags so many times farther off than usual weigh half; usual is so many pixels at least.  What is seen more exactly
than usual is never stray."""

ROBUST_FROM = 4
"""The step of the first round from which on strays weigh less: until then all are far off."""

FREE, FREE_FLAT, TAKEN = 0.3, 0.2, 0.8
"""Of the numbers that are seen: the share that counts as free at least, and of a flat fit; and how much of a number
each unknown takes away."""

CORNERS, ASIDES, TURNS, HEIGHTS = (0.05, np.inf), (0.1, 5.0), (np.radians(0.03), np.radians(2.0)), (0.005, 3.0)
"""Between what each of the widths is believed (pixels, mm, radians, mm)."""

ALIKE = 0.05
"""mm: how far tags of one thing that stands off the wall may be from a plane."""

FREEDOM = 2.0
"""Of Student's t, by which heights are usually distributed.  Our own simulation, no source."""

COMMON = 1.5
"""Of the mean square of a sheet's heights, by what its tags may stand off together and one picture not see it: for what
is said of how sure a fit is.  Our own simulation, no source."""

INSIDE, INSIDE_SHARE, STEEP, FARTHEST = 0.08, 0.3, 2.0, 50.0
"""mm, and a share of what is usual, that a tag may seem to be in the wall, for the plane of the wall is that of the
lowest tags, which lie flat only nearly; how sharply the wall begins, and where it ends.  Our own simulation, no source.
"""

TWICE = 2
"""A width of heights that gets smaller gets so only a little in each round: a step is taken twice."""

MODES = np.array([[1, 1, 1, 1], [-1, 1, 1, -1], [1, 1, -1, -1], [-1, 1, -1, 1]]) * np.array(
    [[1.0], [3**-0.5], [3**-0.5], [1 / 3]]
)
"""How a tag that is matched by all its pixels may move, its size, and its shape, each as coarsely seen as a corner.
With noise alike in all pixels, a slope over a square varies three times as much as the mean, and a twist nine times:
over the square 1, x^2, y^2 and x^2 y^2 are 1, 1/3, 1/3 and 1/9 in the mean."""


class Widths(Record, frozen=True):
    """How far things usually are from where they should be: a tag's corner (pixels), a sheet (mm, radians), a tag's
    height off the wall (mm).  Tags are `matched`, each as a whole; other things are seen corner by corner."""

    corner: float = 0.3
    aside: float = 1.5
    turn: float = float(np.radians(0.3))
    height: float = 0.3
    matched: bool = True


class Fit(Record, frozen=True):
    """A finished fit: its scene and state, its widths, the weights of the rows, how far each is off (pixels), and the
    covariance of all numbers."""

    scene: Scene
    state: State
    widths: Widths
    weights: Array
    off: Array
    covariance: Array

    @property
    def of_sheets(self) -> Array:
        """The covariance of the sheets' numbers."""
        of_sheets = slice(OF_POSE * self.scene.views + OF_LENS, _before_heights(self.scene))
        return np.asarray(self.covariance[of_sheets, of_sheets])


def _before_heights(scene: Scene) -> int:
    return OF_POSE * scene.views + OF_LENS + OF_SHEET * len(scene.sheets)


def exactness(fit: Fit) -> float:
    """How exactly corners are seen by what is left of this fit (pixels), as a deviation of a normal distribution: where
    few numbers are free, more than is left."""
    scene, state = fit.scene, fit.state
    left, spread = _known(scene, state, fit.widths), _spread(scene, state, fit.covariance)
    smooth = len(fit.covariance) > _before_heights(scene) + len(scene.tags)
    held = _held(scene, fit.widths, state, spread, smooth, COMMON)
    free = left.size - len(held) + float(np.trace(fit.covariance @ held))
    return float(np.sqrt((left**2).sum() / free) * (1 + STUDENT / free))


def fitted(scene: Scene, flat: bool = False, known: Widths | None = None) -> Fit | None:
    """The fit; `flat` takes all paper to lie on the wall, and `known` widths are not estimated anew.

    None where no camera sees the tags like that.
    """
    state = _start(scene)
    if state is None:
        return None
    widths = known or (Widths(height=1e-4) if flat else Widths())
    spread = np.full(len(scene.tags), widths.height**2)
    for number in range(2 if flat else ROUNDS):
        for step in range(FIRST_STEPS if number == 0 else STEPS):
            robust = number > 0 or step >= ROBUST_FROM
            state, weights, inverse, far = _step(scene, state, widths, robust, not flat, spread)
            spread = _spread(scene, state, inverse)
            if far < 1e-4:
                break
        widths = known or _widths(scene, state, inverse, widths, flat)
    *_, weights, inverse, _ = _step(scene, state, widths, True, not flat, spread, COMMON)
    off = np.asarray(np.sqrt((_left(scene, state) ** 2).mean((1, 2))))
    return Fit(scene, state, widths, weights, off, inverse)


def _spread(scene: Scene, state: State, inverse: Array) -> Array:
    """The mean square of each height: of what was found, and of how unsure that is."""
    start = _before_heights(scene)
    return np.asarray(state.heights**2 + np.diag(inverse)[start : start + len(scene.tags)])


def _start(scene: Scene) -> State | None:
    poses = []
    for view in range(scene.views):
        rows = scene.view == view
        plane = (scene.on_sheet[rows] + scene.middle[rows][:, None]).reshape(-1, 2)
        pose = flat_pose(plane, scene.seen[rows].reshape(-1, 2), scene.focal, *scene.size) if rows.any() else None
        if pose is None:
            return None
        poses.append(pose)
    return State(
        turns=np.array([turn for turn, _ in poses]), shifts=np.array([shift for _, shift in poses]),
        lens=np.zeros(OF_LENS), sheets=np.zeros((len(scene.sheets), OF_SHEET)), heights=np.zeros(len(scene.tags)),
        rest=np.zeros((scene.basis.shape[-1], 2)),
    )  # fmt: skip


def _left(scene: Scene, state: State) -> Array:
    return np.asarray(scene.seen - seen_at(scene, state, on_wall(scene, state)) - scene.basis @ state.rest)


def _known(scene: Scene, state: State, widths: Widths) -> Array:
    """What is left of what is known of every tag: of its modes where it was matched, else of its corners."""
    return _apart(_left(scene, state)) if widths.matched else _left(scene, state)


def _step(
    scene: Scene, state: State, widths: Widths, robust: bool, smooth: bool, spread: Array, common: float = 0.0
) -> tuple[State, Array, Array, float]:
    """One step of least squares; also the weights, the inverse of the normal matrix, and a sheet's longest move."""
    left = _left(scene, state)
    off = np.sqrt((left**2).mean((1, 2)))
    corner: Array = np.maximum(widths.corner, LEAST_CORNER) * scene.coarse[scene.tag]
    far = off / (STRAY * corner) * (scene.coarse[scene.tag] >= 1) * robust
    weights: Array = 1 / (1 + far**2)
    by = slopes(scene, state, on_wall(scene, state), smooth)
    if widths.matched:
        left, by = _apart(left), _apart(by)
    by = by.reshape(left.size, -1)
    weigh = np.repeat(weights / corner**2, OF_CORNERS)
    held = _held(scene, widths, state, spread, smooth, common)
    now = np.concatenate([np.zeros(OF_POSE * scene.views), state.lens, state.sheets.ravel(), state.heights,
                          state.rest.ravel() if smooth else []])  # fmt: skip
    normal = (by * weigh[:, None]).T @ by + held
    pull = by.T @ (weigh * left.ravel()) - held @ now
    size = 1 / np.sqrt(np.diag(normal))
    inverse = size[:, None] * np.linalg.inv(normal * size[:, None] * size + 1e-9 * np.eye(len(size))) * size
    step = inverse @ pull
    longest = float(np.abs(step[OF_POSE * scene.views + OF_LENS : _before_heights(scene)]).max())
    return moved(state, step), weights, inverse, longest


def _apart(of_corners: Array) -> Array:
    """What is known of the four corners of each tag, as `MODES` that are each seen by themselves."""
    return np.asarray(np.einsum("ij,nj...->ni...", MODES, of_corners))


def _held(scene: Scene, widths: Widths, state: State, spread: Array, smooth: bool, common: float) -> Array:
    """What is usual, as a matrix; `spread` are the mean squares of the heights, `common` is as `COMMON`."""
    lens = np.array([scene.focal_off, *LENS_WIDTHS]) * np.array([1, scene.unit, scene.unit, 1, 1, 1, 1, 1, 1])
    sheet = [widths.aside**-2, widths.aside**-2, widths.turn**-2]
    rest: Array | list[float] = np.full(2 * scene.basis.shape[-1], (SMOOTH * scene.unit) ** -2) if smooth else []
    firm = _firm(state.heights, spread, widths.height)
    held = np.diag(np.concatenate([
        np.full(OF_POSE * scene.views, 1e-12), lens**-2, np.tile(sheet, len(scene.sheets)), firm, rest,
    ]))  # fmt: skip
    start = _before_heights(scene)
    for alike in scene.alike:
        unsure = scene.unsure[alike].max()  # of one thing's tags all stand off alike
        own = np.full(len(alike), ALIKE**2) if unsure else 1 / firm[alike]
        together = unsure**2 if unsure else common * spread[alike].mean()
        held[np.ix_(start + alike, start + alike)] = np.linalg.inv(np.diag(own) + together)
    return held


def _firm(heights: Array, spread: Array, usual: float) -> Array:
    """How firmly each height is held at none: one off the wall as Student's t, for most are small and some are large;
    one in the wall nearly as firmly as the wall stops it."""
    off = 1 / (usual**2 * _heavy(spread, usual))
    inside = min(max(INSIDE, INSIDE_SHARE * usual), usual)
    share = 1 / (1 + np.exp(np.clip(STEEP * heights / inside, -FARTHEST, FARTHEST)))
    return np.asarray(off + share * np.maximum(inside**-2 - off, 0))


def _heavy(spread: Array, usual: float) -> Array:
    """How many times as large as usual the variance of a height is that has this mean square."""
    return (FREEDOM + spread / usual**2) / (FREEDOM + 1)


def _widths(scene: Scene, state: State, inverse: Array, widths: Widths, flat: bool) -> Widths:
    """The widths that this round found."""
    start, heights = OF_POSE * scene.views + OF_LENS, _before_heights(scene)
    free = len(inverse) if flat else OF_SHEET * len(scene.sheets) + len(scene.tags)
    left = max(FREE_FLAT if flat else FREE, 1 - free * TAKEN / (OF_CORNERS * len(scene.seen)))
    variances = np.diag(inverse)[start:heights].reshape(-1, OF_SHEET)
    aside = np.sqrt((state.sheets[:, :2] ** 2 + variances[:, :2]).mean())
    turn = np.sqrt((state.sheets[:, 2] ** 2 + variances[:, 2]).mean())
    corner = np.sqrt(np.median((_known(scene, state, widths) ** 2).mean((1, 2))) / left)
    found = replace(widths, corner=float(np.clip(corner, *CORNERS)), aside=float(np.clip(aside, *ASIDES)),
                    turn=float(np.clip(turn, *TURNS)))  # fmt: skip
    if flat:
        return found
    spread = _spread(scene, state, inverse)
    energy = float((spread / _heavy(spread, widths.height)).mean())
    height = widths.height * (np.sqrt(energy) / widths.height) ** TWICE
    return replace(found, height=float(np.clip(height, *HEIGHTS)))

"""How a wire carries a frame: pure statics, in mm and degrees, forces in parts of the frame's weight.

One picture throughout: a frame of weight W hangs level, its rings `separation` (D) apart; a wire `length` (L) long from
ring to ring runs over two fixings `apart` (s), or over one (s = 0).  It rises `rise` (h) above the line through the
rings, at the angle θ from the horizontal.  Its two slanting parts are the long sides of two right triangles with the
legs (D − s) / 2 and h.  All is plane statics of a wire that neither stretches nor weighs anything, derived here; no
friction unless it is said.
"""

from __future__ import annotations

import math

from templates_gen.base.record import Record


class HungWire(Record, frozen=True):
    """A wire that carries a frame, on one fixing (`apart` 0) or on two: mm and degrees, forces in parts of the weight.

    Needs 0 <= apart <= separation, 0 < separation and 0 < rise.
    """

    separation: float
    rise: float
    apart: float = 0.0

    @property
    def length(self) -> float:
        """From ring to ring: L = s + √((D − s)² + 4 h²)."""
        return self.apart + math.hypot(self.separation - self.apart, 2 * self.rise)

    @property
    def angle(self) -> float:
        """How steep its slanting parts are: θ."""
        return math.degrees(math.atan2(2 * self.rise, self.separation - self.apart))

    @property
    def tension(self) -> float:
        """The tension of the wire, the pull on each ring: T = W / (2 sin θ), for two slanting parts carry W."""
        return 1 / (2 * math.sin(math.radians(self.angle)))

    @property
    def fixing_load(self) -> tuple[float, float]:
        """What each fixing takes downward, and towards the other one.

        On one fixing both parts of the wire pull, and together carry W.  On two, each has one slanting part with
        (T cos θ outward, T sin θ = W / 2 down) and the level part with T inward: T (1 − cos θ) inward is left.
        """
        return (0.5, self.tension * (1 - math.cos(math.radians(self.angle)))) if self.apart else (1.0, 0.0)


def moved_apart(wire: HungWire, apart: float) -> HungWire:
    """The same wire on fixings another distance apart (mm, at most the separation of its rings; 0 is one fixing).

    Its rise h = ½ √((L − s)² − (D − s)²) = ½ √((L − D)(L + D − 2 s)) goes with √(L + D − 2 s): exact also for a wire so
    flat that L − D is lost in rounding.
    """
    both = wire.length + wire.separation
    rise = wire.rise * math.sqrt((both - 2 * apart) / (both - 2 * wire.apart))
    return HungWire(wire.separation, rise, apart)


def least_mass_depth(wire: HungWire) -> float:
    """How far under its rings a frame's centre of mass has to lie (mm) to come back level on a wire without friction.

    c > D (D − s) / (4 h).  Turn the frame by φ and let it find its lowest place sideways: the middle between the
    rings then lies √(a² − u²) under the fixings, where a = (L − s) / 2 and u = (D cos φ − s) / 2 (that middle runs on
    an ellipse with the half axis a, and this is the ellipse's lowest point).  The centre of mass is c cos φ lower;
    the depth of both, to the second order, is h + c + φ² (D (D − s) / (8 h) − c / 2): greatest when level for that c.
    """
    return wire.separation * (wire.separation - wire.apart) / (4 * wire.rise)


def steady_angle(separation: float, mass_depth: float) -> float:
    """The angle (degrees) from which on a wire without friction brings the frame back level; 90 and more: none does.

    `least_mass_depth` again, as h = (D − s) / 2 · tan θ makes it c > D / (2 tan θ): at each ring, the wire and the
    line to the centre of mass have to make more than a right angle.  The number of fixings does not matter.
    """
    return math.degrees(math.atan2(separation / 2, mass_depth))


def least_apart(separation: float, length: float, angle: float) -> float:
    """How far apart (mm) two fixings make a wire as steep as `angle` (degrees, over 0, under 90); 0: one is enough.

    From cos θ = (D − s) / (L − s); it is always less than the separation of the rings.
    """
    level = math.cos(math.radians(angle))
    return max(0.0, (separation - length * level) / (1 - level))


def slip_to_tilt(wire: HungWire, mass_depth: float, tilt: float) -> float:
    """How much wire (mm) has to slip from one side to the other until the frame hangs `tilt` degrees crooked.

    For a small tilt, and never less than 0.  Friction then holds the parts at a − δ and a + δ, with a = (L − s) / 2
    and p = (D − s) / 2.  To the first order a shift x and a turn φ keep p x = a δ + h D φ / 2, and to the second the
    frame rises by (x² + D s φ² / 4) / (2 h) + c φ² / 2, which is least at
    φ = −a δ D / (h D² / 2 + 2 p² (c + D s / (4 h))).  One fixing: φ = −e / (h + c) for a wire that slipped by e.
    """
    half = (wire.separation - wire.apart) / 2
    stiff = mass_depth + wire.separation * wire.apart / (4 * wire.rise)
    turning = wire.rise * wire.separation**2 / 2 + 2 * half**2 * stiff
    return max(0.0, math.radians(tilt) * turning / ((wire.length - wire.apart) / 2 * wire.separation))

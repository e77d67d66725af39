"""A whole wall done by hand in the browser: nine framed lantern slides over the settle of a village library, from an
empty folder to the template's PDF."""

from __future__ import annotations

from tests.desk.browser import Hand

NAME = "nine-lantern-slides"

FRAMES = (
    ("A", "Market day", "24x36", "22 lb", "", ""),
    ("B", "Slipway", "16x20", "5.5 lb", "", "3 1/8"),
    ("C", "Rope walk", "", "", "", "2 7/8"),
    ("D", "Reeds I", "11x14", "3 lb", "", "2 1/2"),
    ("E", "Reeds II", "", "", "", "2 9/16"),
    ("F", "Reeds III", "", "", "", "2 5/8"),
    ("G", "Spit", "8x10", "1.5 lb", "", "1 1/2"),
    ("H", "Buoys I", "", "", "s", "7/16"),
    ("J", "Buoys II", "", "", "", "3/8"),
)
"""Id, title, size, weight, hanger and drop, in inches; what is empty is as for the frame before."""

SIZES = {"A": (24, 36), "B": (16, 20), "C": (16, 20), "D": (11, 14), "E": (11, 14), "F": (11, 14), "G": (8, 10),
         "H": (8, 10), "J": (8, 10)}  # fmt: skip
"""Width and height in inches of each."""

HOOK = ("h", "7/8", "", "30 lb", "", "1 1/4", "45")
HEAVY = ("h", "1 1/8", "", "50 lb", "2", "1 1/4", "45")
SMALL = ("n", "", "2 mm")
"""The fields of a fixing in their order: kind, below, diameter, rating, nails, length, angle."""

RINGS = ("2", "2", "4 1/4", "4 3/16")
"""From the left, from the right, and both drops."""


def along(hand: Hand, texts: tuple[str, ...]) -> None:
    """Type into one field after the other, from the one that has the focus; an empty text leaves a field as it is."""
    for text in texts:
        hand.type(text)
        hand.press("Tab")
        hand.saved()


def begin(hand: Hand) -> None:
    """A new wall of 14 by 8 feet with its first frame."""
    hand.click("#new_job_title")
    for text in ("Nine lantern slides", "", "14'", "8'"):
        hand.type(text)
        hand.press("Tab")
    hand.type(FRAMES[0][2])
    hand.press("Enter")
    hand.page.wait_for_selector("#drawing")


def on_the_wall(hand: Hand) -> None:
    """A settle, a switch and an outlet: name, use of furniture, left, bottom, width, height, clearance."""
    for kind, texts in (
        ("furniture", ("settle", "", "42", "", "84", "33")),
        ("switch", ("", "6", "46", "", "", "2")),
        ("outlet", ("", "30", "14")),
    ):
        number = hand.page.locator("#drawing .feature").count()
        hand.click(f'[data-focus="add {kind}"]')
        hand.page.locator("#drawing .feature").nth(number).wait_for()
        hand.naming()
        along(hand, texts)


def the_frames(hand: Hand) -> None:
    """Nine frames typed in line by line, the hangers of some and their fixings."""
    hand.button("Next: the frames")
    hand.click('[data-key="new frame title"]')
    for _, title, size, weight, hanger, drop in FRAMES[1:]:
        count = hand.page.locator("#drawing .frame").count()
        for text in (title, size, "", weight, hanger):
            hand.type(text)
            hand.press("Tab")
        hand.type(drop)
        hand.press("Enter")
        hand.page.locator("#drawing .frame").nth(count).wait_for()
    hand.click('details[data-focus="fixing"] summary')
    hand.press("Tab")
    along(hand, HOOK)
    hand.button("A")
    hand.click('[data-key="frame/A/title"]')
    along(hand, (FRAMES[0][1], "", "", FRAMES[0][3]))
    hand.click('[data-focus="hanger rings"]')
    hand.press("Tab")
    along(hand, RINGS)
    own_fixing(hand, "A", HEAVY)
    for name in "HJ":
        hand.button(name)
        own_fixing(hand, name, SMALL)


def own_fixing(hand: Hand, name: str, texts: tuple[str, ...]) -> None:
    """A fixing for one frame alone."""
    hand.click(f'details[data-focus="fixing {name}"] summary')
    hand.press("Tab")
    along(hand, texts)


def arranged(hand: Hand) -> None:
    """In columns about the settle's middle, above it."""
    hand.button("Next: arrange them")
    hand.click('[data-focus="kind columns"]')
    hand.saved()
    hand.click('[data-key="group/columns"]')
    hand.press("Control+a")
    along(hand, ("D, H\nB, F\nA\nC, E\nG, J", ""))
    hand.type("s")  # centred on the settle
    hand.saved()
    hand.press("Tab")
    hand.type("a")  # above the settle
    hand.saved()
    hand.press("Tab")
    along(hand, ("7",))


def the_paper(hand: Hand) -> None:
    """The template, linked."""
    hand.step("Paper")
    hand.click('[data-focus="way linked"]')
    hand.saved()
    hand.button("Make the template")
    hand.page.locator("#made a").first.wait_for(timeout=240_000)

"""A whole wall done by hand in the browser: nine framed lantern slides over the settle of a village library, from an
empty folder to the template's PDF."""

from __future__ import annotations

from tests.desk.browser import Hand

NAME = "nine-lantern-slides"

FRAMES = (
    ("A", "Market day", "24", "36", "22 lb", ""),
    ("B", "Slipway", "16", "20", "5.5 lb", "3 1/8"),
    ("C", "Rope walk", "16", "20", "5.5 lb", "2 7/8"),
    ("D", "Reeds I", "11", "14", "3 lb", "2 1/2"),
    ("E", "Reeds II", "11", "14", "3 lb", "2 9/16"),
    ("F", "Reeds III", "11", "14", "3 lb", "2 5/8"),
    ("G", "Spit", "8", "10", "1.5 lb", "1 1/2"),
    ("H", "Buoys I", "8", "10", "1.5 lb", "7/16"),
    ("J", "Buoys II", "8", "10", "1.5 lb", "3/8"),
)
"""Id, title, width, height, weight and drop, in inches."""

HOOK = {"below": "7/8", "rating": "30 lb", "length": "1 1/4", "angle": "45"}
HEAVY = {"below": "1 1/8", "rating": "50 lb", "nails": "2", "length": "1 1/4", "angle": "45"}
RINGS = {"left": "2", "right": "2", "drop_left": "4 1/4", "drop_right": "4 3/16"}


def begin(hand: Hand) -> None:
    """A new wall of 14 by 8 feet with its first frame."""
    for name, text in (("title", "Nine lantern slides"), ("wallWidth", "14'"), ("wallHeight", "8'")):
        hand.click(f"#{name}")
        hand.type(text)
    for name, text in (("frameWidth", FRAMES[0][2]), ("frameHeight", FRAMES[0][3])):
        hand.click(f"#{name}")
        hand.type(text)
    hand.button("Begin")
    hand.page.wait_for_selector("#drawing")


def on_the_wall(hand: Hand) -> None:
    """A settle, a switch and an outlet."""
    for kind, name, values in (
        ("furniture", "settle", {"left": "42", "width": "84", "height": "33"}),
        ("switch", "", {"left": "6", "bottom": "46", "clear": "2"}),
        ("outlet", "", {"left": "30", "bottom": "14"}),
    ):
        number = hand.page.locator("#drawing .feature").count()
        hand.choose("#new_feature", kind)
        hand.button("Add to the wall")
        hand.page.locator("#drawing .feature").nth(number).wait_for()
        if name:
            hand.put(f"wall/feature/{number} {kind}/name", name)
        for field, text in values.items():
            hand.put(f"wall/feature/{number} {name or kind}/{field}", text)


def the_frames(hand: Hand) -> None:
    """Nine frames typed in line by line, their hangers and their fixings."""
    hand.button("Next: the frames")
    hand.click('[data-key="new frame id"]')
    for frame in FRAMES[1:]:
        count = hand.page.locator("#drawing .frame").count()
        for text in frame:
            hand.type(text)
            hand.press("Tab")
        hand.press("Enter")
        hand.page.locator("#drawing .frame").nth(count).wait_for()
    first = FRAMES[0]
    hand.button("A")
    hand.put("frame/A/title", first[1])
    hand.put("frame/A/weight", first[4])
    hand.click('[data-focus="hanger rings"]')
    for name, text in RINGS.items():
        hand.put(f"frame/A/hanger/{name}", text)
    hand.click('details[data-focus="fixing A"] summary')
    for name, text in HOOK.items():
        fixing(hand, "fixing", "hook", name, text)
    for name, text in HEAVY.items():
        fixing(hand, "frame/A/fixing", "hook", name, text)
    for name in "HJ":
        hand.button(name)
        hand.click('[data-focus="hanger sawtooth"]')
        hand.saved()
        hand.click(f'details[data-focus="fixing {name}"] summary')
        fixing(hand, f"frame/{name}/fixing", "nail", "diameter", "2 mm")


def fixing(hand: Hand, place: str, kind: str, name: str, text: str) -> None:
    """A measure of a fixing, which is chosen first."""
    if hand.page.locator(f'[data-key="{place}/kind"]').first.input_value() != kind:
        hand.choose(f'[data-key="{place}/kind"]', kind)
    hand.put(f"{place}/{name}", text)


def arranged(hand: Hand) -> None:
    """In columns about the settle's middle, above it."""
    hand.button("Next: arrange them")
    hand.click('[data-focus="kind columns"]')
    hand.saved()
    hand.put("group/columns", "D, H\nB, F\nA\nC, E\nG, J")
    hand.choose('[data-key="group/centre_on"]', "settle")
    hand.choose('[data-key="group/height/way"]', "above settle")
    hand.put("group/height/amount", "7")


def the_paper(hand: Hand) -> None:
    """The template, linked."""
    hand.step("Paper")
    hand.click('[data-focus="way linked"]')
    hand.saved()
    hand.button("Make the template")
    hand.page.locator("#made a").first.wait_for(timeout=240_000)

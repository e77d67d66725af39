"""What people sit or lie on, by what they call it, in English, German, French and Spanish.

Our own list, no source.  It only tells which furniture to ask about: a job that says what people do there goes first.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping

USES = ("bed", "seat", "cot")
"""What people do on furniture, where something over it may fall on them; "cot" is for babies and small children."""

_WORDS: Mapping[str, str] = {
    "cot": """
        cot, crib, cradle, bassinet, moses basket, basinet, carrycot, playpen, play pen, play mat, changing table,
        changing station, changing unit, changing mat, nursery bed, pram, babybett, kinderbett, gitterbett, wiege,
        stubenwagen, laufstall, laufgitter, wickelkommode, wickeltisch, babykorb, krabbeldecke, berceau, lit bebe, lit
        de bebe, lit enfant, couffin, table a langer, commode a langer, parc bebe, parc a bebe, parc pour bebe,
        landau, cuna, minicuna, moises, capazo, cambiador, parque infantil, parque de bebe, parque bebe
        """,
    "bed": """
        bed, bunk, daybed, futon, headboard, mattress, divan, hammock, cama, litera, colchon, hamaca, lit, matelas,
        hamac, bett, etagenbett, hochbett, bettsofa, schlafsofa, schlafcouch, matratze, hangematte, haengematte,
        diwan, lits superposes, lit mezzanine, clic clac, canape lit, sofa cama, cabecero, tete de lit, berth
        """,
    "seat": """
        sofa, couch, settee, loveseat, chair, armchair, bench, seat, seating, stool, pew, recliner, wheelchair,
        highchair, ottoman, chaise, chaise longue, chaise lounge, banquette, settle, pouf, pouffe,
        beanbag, bean bag, chesterfield, davenport, lounger, deckchair, sectional, rocker, barstool, booth,
        windowseat, stuhl, sessel, hocker, bank, sitzbank, eckbank, gartenbank, holzbank, liege, kanapee,
        chaiselongue, ottomane, hochstuhl, ohrensessel, sitzsack, chaise haute, canape, fauteuil, banc,
        tabouret, meridienne, causeuse, transat, bergere, sillon, silla, banco, banqueta, taburete, puf, butaca,
        mecedora, tumbona, trona
        """,
    "other": """
        table, desk, shelf, shelves, bookcase, bookshelf, bookshelves, cabinet, cupboard, sideboard, chest, drawers,
        dresser, wardrobe, console, counter, worktop, piano, organ, television, tv, fireplace, mantel, mantelpiece,
        mantelshelf, plant, lamp, credenza, buffet, bureau, rack, box, trunk, workbench, work bench, tool bench,
        potting bench, bench vice, nightstand, bedside, bedside table, sofa table, basin, sink, vanity, bath, bathtub,
        stove, cooker, oven, fridge, aquarium, stand, tisch, schreibtisch, schrank, regal, kommode, anrichte, konsole,
        klavier, flugel, fernseher, kamin, truhe, theke, werkbank, hobelbank, fensterbank, nachttisch, vitrine, lampe,
        pflanze, spule, armoire, etagere, bibliotheque, commode, cheminee, bahut, table de chevet, table de nuit,
        tele, plante, mesa, mesilla, escritorio, armario, estante, estanteria, comoda, aparador, mostrador, chimenea,
        televisor, planta, lampara, baul, librero
        """,
}  # fmt: skip

NAMES = {tuple(words.split()): use for use, listed in _WORDS.items() for words in " ".join(listed.split()).split(", ")}
"""The use that goes with a word, or with several in a row."""

ENDINGS = ("bett", "sofa", "couch", "sessel", "stuhl", "hocker", "matratze", "liege")
"""Last parts of German compounds, which mean what these mean."""

_PLURALS = ("s", "es", "x", "e", "n", "en", "er")
_LONGEST = max(map(len, NAMES))


def use_by_name(name: str) -> str:
    """What people do on furniture of this name: "bed", "seat", "cot", "other", or "" when no word of it is known.

    Of several words the longest that is known counts, and of those as long the one that matters most for what may
    fall: so a sofa bed is a bed, and a work bench no seat.
    """
    words = _plain(name)
    for length in range(min(_LONGEST, len(words)), 0, -1):
        parts = [words[at : at + length] for at in range(len(words) - length + 1)]
        found = {use for part in parts if (use := _use_of(part))}
        for use in ("cot", "bed", "seat", "other"):
            if use in found:
                return use
    return ""


def _use_of(words: tuple[str, ...]) -> str:
    *first, last = words
    for word in (last, *(last.removesuffix(end) for end in _PLURALS if last.endswith(end))):
        if use := NAMES.get((*first, word), ""):
            return use
        if not first and word.endswith(ENDINGS):
            return NAMES[(next(end for end in ENDINGS if word.endswith(end)),)]
    return ""


def _plain(name: str) -> tuple[str, ...]:
    """The words of a name in small letters, without accents."""
    apart = unicodedata.normalize("NFKD", name.replace("ß", "ss").casefold())
    letters = "".join(char for char in apart if not unicodedata.combining(char))
    return tuple(re.findall(r"[^\W\d_]+", letters))

"""Square tags that a program finds in a photograph, each with a number of its own: the published AprilTag 36h11 family.

Edwin Olson, AprilTag: a robust and flexible visual fiducial system, ICRA 2011; the codes are those of the AprilTag
library of the University of Michigan (BSD licence), as OpenCV carries them (DICT_APRILTAG_36h11): of each tag the six
rows of six modules from the upper left, a white module 1, as nine hexadecimal digits.
"""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Form, Polygon

ACROSS = 8
"""Modules along a side: six of the code, and a black one at each end."""

_DATA, _DIGITS, _HEXADECIMAL = 6, 9, 16
"""Modules of the code along a side, and the digits of a code, with their base."""

_CODES = """
21a146bab92d18fe9b7089014bb193979e2744153d3d735cd5b8cfa10ba56a02b874a608b57fb8d444e20b5a6461d897f2cab3469ffc
594ca45c2fa1c2d2e297c24b97275928624a1caafe99a3236ddc16884e527d65771a8c7ef52925b812e59cc1a17fa58ab31eb43384f9
3913d5345d79b1a3b50dfbe768d5cd7a031db9c8f7a4b46987e06b6e0c5d5275bc567bb41e6302bc28ac7d046aa65fe23265400eb616
f7a0668362dd0afdf63b9cb60b1ad6a1caf993b62efb5bb210d93ddee55094ba0cd1479b2a23abb274f67f4b5f58a815818743427d64
1dec40874892ab3a0238d5742ee0c43567a15db311cb1c957ca1f9a2245782329ace98f3ccc52c528da8b3578cd5b4b9e36ac9cdd3ce
cbdaa83911986256b1bae6cc889df91b10e5a1a9d5a752b651aa9d4d5c2e19d5b163736bf753d60a85e84b37d2fce43a9f2bb926d1a6
ed8d236e56af846f37ea56a51385d497146c470360eca8c4bcd67a295f3901ef6b577e97520602f5ab5119492e48e299ab7b79f5737a
a814c683e2da900583d4aba4797982a0e65cf480ccc150b20ea732a9506710a0486e2ee1b0a972615e73f3a25717e205b98ec9ab2b24
d9339e076eb8874f999420a55cce364ff9928a4cb8f0af72aee76673cc6b569c99ca6a59366a0c535509e51943ba6d227d1d2acf163b
d989fef68641707bb2f9bd312ab77739c20768bf8d1bfdedd84a6e42eaec49b302b68d534ebb930ce439c5d9b5e1fc9228df8a6a8d4a
b53902a18b163475eead2f5af29aab5dc850b3ec257864799c44058bc68dc04702f15ddeb42293da91acad03828133639710e692ad70
8ad05c5b985e654c1b3d0ac2b3b4bbfa0552722dde306369d1acd2a2d994e605fad9139d57535ae965f5ef1d46ebc3e6acc0a99c835d
5463e49a525676893aabed3706459bdded9464fa04c09250e44e75e58a374bc24caa5741e42cf65886ea238538f758130250ceb33bbd
786ae8670f0de8c96926c81efe669f4890863fbf92a4dd6555a7609ccae236db256c16a3d78ac72212dc1fe262af2051090932c08afe
53feca7755d292497a2f101a22bc6ad16b14d2eca4b20a6fa603d43057c3b69e817b54d240abfc3e0f53ad16e736f3a06e827782e418
3e906214601fd7ad4ec8765bc64ad3d8215f96317a27e05f813ca60e7adc22ebf52c4a50724f6ae2e540fd7ea89c962f741264042b01
197cb77541f2bb850dc87d6c2addc8d2dedecb6b01738be4210368bb4622a77733226ef84933ade391f1c896c7897665aba92f46ba12
297981767ad702cf8d473198b90ec2e8e06b36a1d6980a5ce8650f637870348f3ab41d46e6032a8b54c11eec73261de50d6296616e32
37cff1a0ac457847ab776e52ff9980819bb950cb2b5d88b691806312d9c2ce9158c2e7386b84015ea67695db9f3e72745c101ca1a571
22e7036f5d5dcedae1809532c5bf7e4e9d5459d84f9cbf42ed08515db4a91fa0d58e5b1f69fb9fa4329ba51f60587c67427d8b9021ed
bb594449eaa231f35a0d95943f4dec46125705a16930de2512eb58ab48e2dc00cb68494f927a6b5b1bb90f3450632e8fad0c2eeaf2a7
1eb2af39d511548c524693d5de4888e9161d68836ff4f51bd2e4417a0ac40e98bb762b4a1caf83a1ac2700bbbdfb2ed09aaf8520294e
7aa104ca66a96d2bcb28f2ec75e607065eb47ad9b3a8c3572d6cbfd426efb8f64ee4dbaa983d7a8f18ca31f499025457b46d53ae4149
9d3c64396795332ee570884d6641dd3528d8d8e51d246d6029ca38d94ab610c766bb8880fd0c6b3193bff8b9d1e786f4d4ed4e6b9b79
cfa8bb36920a4366c65cefb95360f06b6605bb51d25e7f7e26264181fda98552241dbc5956fb4b280eda64c6d0ce7b080f46192ee7e9
943ff512488b3beadf9b27e58d0be0b45fd269fb3a72a61383a8326688639b354d01c99290b10c02af667fc6d17acd758133abd07f61
543012473067794d58a855b12019cb4d7fdb31a193e6a3da3b76d44153f1e045544335b592f61249d269a35f8a0426778969487cdc6f
4ea7e7d9c2e367345b3a5e8f30476d9faa7764e4ea1df12a7b434d4973d9553cdb4189758bda76d2ef54a4dec8811616f8a4036f4e6b
2736282a6a413d229f901fe4c179abfce56e2d325b9efd9901f6a93aa64fade65288d60b0a53e960be9e09c3e44d9b7863dd98bb4833
34b181ed75b373f4908572b7b912c5d056a4e4671296d2a08d6f78452949c612501ec5b7b8f54779ca3b7ea4b3443d6b9b4be2dcb848
b51fc47ec6f38cf98890f2fe93407fd540abee53c3d08f7098ebca65467c309ae6fd797e8bc4739e9971930fe49a752df57bd47fe53e
6f15309285de1cc489111ce3dcda4c7e157c5526911129d65118056663c1cb3bfc5940023a350038776d4f679c446f2667b17ae59e97
36132d63e8e07492bf188acddf1ed9052d025b6bd01f584a4d070ec9b2a3af4ab18852fc9de9183903576ee9e0e8d00d210709b5a95c
a9022a314a03ea2b9c1e589ec5e74470eedd36bd44159b7f8d2516dcde4bfa59eda99c308ffb98a8b9ac777e718d0a53cb3c9ed1dced
c238535eaee4aa6437cd8345a1e5a19e05ae96d780d25e2c885185c5314f8dba47c37ee11d82c6f8c325c5c6c85d9d1bae09549e075e
8a6845c15adf9f10fe95cef30b071933b20d1f0de3a6f596f5bba6cd61d9f34a478ad328dade4012fd157643703a2bf5d222303e348d
41b9bf9a95a4e93ee3462b445124e01719c173a0d9137932b416ddff4b615a72c880f1ac6f3bb6aa1476d21ae6f9c290688768111210
623458f55f31919e1fef47a7dd1c6c777808eec96f0969b3c9bdaf6fd43257360e7d0aa90651cda34e2acc04e79460d1a2282b79b177
4eb189f4bcbf9c3b1e6f6c64841e54e50a2e632f30f23b3bb3de6c6331f5383bca1dafe5d1816cab90d8407aca794e1d7e592de65442
65149794933f7517123c9ce91957ecb81d7aede140178c09b0ee2c14e61f7746d336649a865dd0880f7214bfb8d8b9c2e2299a70737f
c0ecf90c9bb8b26e0105678fcac33b483834eb9d84b837ca277ea202af5f66b4a678c122121592bf3cc82b48c977cbe90fc5ef7d7931
117947995344d5f970df2f12e72114277b370b8fa73d536e16f423057402b7ec342423a7758c34dab67dc6161429b2220687101af0fa
54d22bc75908ba3af9eb68c9b512605d442c6ab88b7f4207c7657d377940d20ac2eb77b63e87318ec47afea1aa46de35b7448a36ba10
f0711536b963f87ed4d83ab99657b2eb5a0fb6adfaf3287e07a4ea7b4518f4e9064a37383c242ca1296b25c4a48b01d83ace51cceb25
480f58db0bae29586789fc0fba0dd06475e9f7fe46b4c43cef026d6393585a287b4044564fa47cbea7619f955a51b9a13301533637c7
7587a972a60de116227d4ce68aeaf135e81c31c9b647cac43d8155d853e1cfb4fcdc5cf0ee696fd2db71618475b9b4b8781328579505
95e9477719aa0302e2ec1828d17bc50796358785c1b79d37aadb7a817f02ce0fd63dfb0a510ac1af23d1edf8d3f4b73a40237d789e9c
8f11c77cac4bd036be7dfa995c97b14e8251ca070e7f45c22dbcd5a0db726c86b7776de280f58e748e1ac1ff4a1bbaea85c26ac557fc
e5d1ef3571f29d4e10459fbb15bd4b0495596cb70acf8f8617a518c391dac3451235e2cc74407c4fedf1609a24ced27dc17
""".replace("\n", "")

COUNT = len(_CODES) // _DIGITS
"""How many tags the family has: 587, numbered from 0."""

ON_CARDS = 8
CARDS_FROM = COUNT - ON_CARDS
"""The last tags are those of two cards with four each; those before are for sheets.  Our own design."""

_Cell = tuple[int, int]


def quiet(side: float) -> float:
    """What must stay white around a tag with sides of so many mm: a module, and 2 mm at least.  Our own design: the
    family asks for one module."""
    return max(side / ACROSS, 2.0)


def white_modules(number: int) -> frozenset[_Cell]:
    """The white modules of a tag, each by its column from the left and its row from the foot."""
    code = int(_CODES[_DIGITS * number : _DIGITS * (number + 1)], _HEXADECIMAL)
    bits = f"{code:0{_DATA * _DATA}b}"
    return frozenset((at % _DATA + 1, ACROSS - 2 - at // _DATA) for at, bit in enumerate(bits) if bit == "1")


def tag_name(number: int) -> str:
    """The name of a tag's form."""
    return f"tag {number}"


def number_of(form: str) -> int | None:
    """The number of the tag that a form of this name is; None where it is none."""
    words = form.split()
    return int(words[1]) if words[0] == "tag" else None


def tag_form(number: int, side: float) -> Form:
    """A tag with sides of so many mm about its lower left corner.

    Modules of one colour that touch are one outline, each drawn over the one about it: no seams show between them.
    """
    white, module = white_modules(number), side / ACROSS
    items = tuple(
        Polygon(tuple((x * module, y * module) for x, y in outline), grey=grey) for grey, outline in _patches(white)
    )
    return Form(tag_name(number), Rect(0.0, 0.0, side, side), items)


def _patches(white: frozenset[_Cell]) -> Iterator[tuple[float, list[_Cell]]]:
    """Every patch of one colour by its outline, the outer ones first; the colour is 0 for black, 1 for white."""
    left = {(x, y) for x in range(ACROSS) for y in range(ACROSS)}
    edge = [(0, 0)]
    while edge:
        start = edge.pop(0)
        if start not in left:
            continue
        patch = _patch(start, left, white)
        left -= patch
        edge += sorted(cell for one in patch for cell in _beside(one) if cell in left)
        yield float(start in white), _outline(patch)


def _patch(start: _Cell, left: set[_Cell], white: frozenset[_Cell]) -> set[_Cell]:
    """All cells of the colour of this one that hang together with it by their sides."""
    found, ahead = {start}, [start]
    while ahead:
        for cell in _beside(ahead.pop()):
            if cell in left and cell not in found and (cell in white) == (start in white):
                found.add(cell)
                ahead.append(cell)
    return found


def _beside(cell: _Cell) -> tuple[_Cell, ...]:
    x, y = cell
    return (x + 1, y), (x, y + 1), (x - 1, y), (x, y - 1)


def _outline(patch: set[_Cell]) -> list[_Cell]:
    """The corners along the outer side of a patch, counter-clockwise from its lowest left one."""
    ways = ((1, 0), (0, 1), (-1, 0), (0, -1))
    ahead_left = {(1, 0): (0, 0), (0, 1): (-1, 0), (-1, 0): (-1, -1), (0, -1): (0, -1)}
    start = min(patch, key=lambda cell: (cell[1], cell[0]))
    found: list[_Cell] = []
    at, way = start, 0
    while not found or at != start:
        x, y = at
        found.append(at)
        while True:  # the inside is on the left: bend right where a cell lies there, else go on, else bend left
            (lx, ly), (rx, ry) = ahead_left[ways[way]], ahead_left[ways[(way - 1) % 4]]
            if (x + lx, y + ly) in patch:
                way = (way - 1) % 4 if (x + rx, y + ry) in patch else way
                break
            way = (way + 1) % 4
        at = x + ways[way][0], y + ways[way][1]
    return found

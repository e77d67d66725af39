"""What a photograph tells of frames that hang, as data and as the readings that `correct` takes."""

from __future__ import annotations

from typing import Any

from templates_gen.photo.hung import Hung


def as_data(hung: Hung) -> dict[str, Any]:
    """The readings for other programs (mm)."""
    frames = [{"id": one.id, "left": list(one.left), "right": list(one.right), "sure": one.sure} for one in hung.frames]
    return {"format": 1, "frames": frames, "not_read": [{"id": name, "why": why} for name, why in hung.doubts]}


def as_readings(hung: Hung, centre_line: float) -> str:
    """The readings as the spreadsheet that `correct` reads."""
    rows = ["frame,left,right,left_edge"]
    for one in hung.frames:
        name = '"' + one.id.replace('"', '""') + '"'
        rows.append(f"{name},{one.left[1]:.2f} mm,{one.right[1]:.2f} mm,{one.left[0] - centre_line:.2f} mm")
    return "\n".join(rows) + "\n"

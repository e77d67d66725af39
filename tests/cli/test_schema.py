"""The JSON Schema of the job file, against an independent library: samples pass, broken jobs do not."""

import datetime
import json
import tomllib

import jsonschema
import pytest

from templates_gen.base.record import Table
from templates_gen.cli.interview.schema import job_schema
from tests.job.test_whole_job import WHOLE
from tests.jobs import SAMPLES
from tests.made import SAMPLE_NAMES
from tests.running import MINIMAL, run

SCHEMA = job_schema()
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)


def as_json(toml: str):
    """The tables of a TOML text as JSON knows them: a date is a text there."""
    return json.loads(json.dumps(tomllib.loads(toml), default=datetime.date.isoformat))


def test_the_schema_is_one():
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_the_schema_beside_the_samples_is_current():
    ran = run("schema")
    assert (ran.code, ran.err) == (0, "")
    beside = (SAMPLES / "job.schema.json").read_text(encoding="utf-8")
    assert beside == ran.out, "write it anew: templates-gen schema > samples/job.schema.json"


@pytest.mark.parametrize("name", SAMPLE_NAMES)
def test_a_sample_is_valid_and_names_its_schema_to_editors(name):
    text = (SAMPLES / f"{name}.toml").read_text(encoding="utf-8")
    assert text.startswith("#:schema ./job.schema.json\n")
    VALIDATOR.validate(as_json(text))


def test_a_job_with_every_field_is_valid():
    VALIDATOR.validate(as_json(WHOLE))


@pytest.mark.parametrize(
    "old, new",
    [
        ('unit = "mm"', 'unit = "yd"'),
        ('unit = "mm"', "unti = 1"),
        ("[wall]", "[walls]"),
        ("width = 4000", "width = true"),
        ("width = 4000", "width = -1"),
        ('wiring = "uk"', 'wiring = ["uk"]'),
        ('kind = "switch"', 'kind = "sofa"'),
        ('kind = "switch"', "# no kind"),
        ("bottom = 1050", "bottom = [1050]"),
        ("[[frame]]", "[frame]"),
        ("drop = 60", 'hanger = "string"'),
        ("drop = 60", 'hanger = { kind = "rings", lefft = 1 }'),
        ("drop = 60", "weight = 4"),
        ("drop = 60", "print = [100]"),
        ("drop = 60", 'mat = { widht = "2 in" }'),
        ("drop = 60", '[group]\nrows = ["A"]'),
        ("drop = 60", "[group]\nplace.A = { middle = [0, 0] }"),
        ("drop = 60", "[group]\nplace.A = { centre = [0, 0, 0] }"),
        ("drop = 60", "[paper]\nsize = [210]"),
        ("drop = 60", "[paper]\nmargin = { left = true }"),
        ("drop = 60", "[frame_type.tall]\nwidht = 100"),
    ],
)
def test_a_broken_job_is_not_valid(old, new):
    VALIDATOR.validate(as_json(MINIMAL))
    assert old in MINIMAL
    assert not VALIDATOR.is_valid(as_json(MINIMAL.replace(old, new)))


def test_no_field_may_be_just_anything():
    ours = [table for table in Table.__subclasses__() if table.__module__.startswith("templates_gen.job.tables.")]
    known = {table.__name__ for table in ours}
    assert len(known) > 12 and known - {"JobFile"} <= set(SCHEMA["$defs"])
    open_fields = [
        f"{name}.{field}"
        for name, told in SCHEMA["$defs"].items()
        for field, schema in told.get("properties", {}).items()
        if not set(schema) - {"default", "description"}
    ]
    assert open_fields == []


def test_fields_are_explained_to_whoever_completes_them():
    assert SCHEMA["$defs"]["FrameTable"]["properties"]["drop"]["description"].startswith("from the top edge down")

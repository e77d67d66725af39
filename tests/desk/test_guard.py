"""Nobody is let in but the browser of the person who started the desk, and nothing outside its folder is touched."""

import signal
import threading
import time

import pytest

from templates_gen.desk.guard import HEADERS, Guard
from templates_gen.desk.messages import Asked
from templates_gen.desk.web import MOST_BODY
from tests.desk.at_the_desk import LIBRARY, AtDesk, running

GUARD = Guard("k" * 43, 4321)
PATHS = (
    "/",
    "/state",
    "/change",
    "/events",
    "/page/main.js",
    "/written",
    "/anything",
    "/../etc/passwd",
    "//",
    "/%2e%2e/",
)


def asked(method="GET", path="/state", query=None, **headers):
    told = {"host": "127.0.0.1:4321", "cookie": f"desk-4321={'k' * 43}", **headers}
    told = {name.replace("_", "-"): value for name, value in told.items() if value is not None}
    return Asked(method=method, path=path, query=query or {}, headers=told)


OWN = "http://127.0.0.1:4321"
STRANGERS = [
    {"host": "localhost:4321"}, {"host": "evil.example:4321"}, {"host": "127.0.0.1"}, {"host": None},  # rebound names
    {"cookie": None}, {"cookie": "desk-4321=wrong"}, {"cookie": f"desk-1={'k' * 43}"}, {"cookie": "desk-4321="},
    {"cookie": "é;=;;=\x00"},
    {"origin": "http://evil.example"}, {"origin": "null"}, {"origin": "http://127.0.0.1:9"}, {"origin": "https://127.0.0.1:4321"},
    {"sec_fetch_site": "cross-site"}, {"sec_fetch_site": "same-site"},
    {"origin": OWN, "sec_fetch_site": "cross-site"},
]  # fmt: skip


@pytest.mark.parametrize("path", PATHS)
@pytest.mark.parametrize("method", ["GET", "POST", "PUT", "OPTIONS", "HEAD"])
@pytest.mark.parametrize("strange", STRANGERS, ids=str)
def test_a_stranger_is_refused_whatever_the_path(strange, method, path):
    stopped = GUARD.stopped(asked(method, path, **{"origin": OWN if method == "POST" else None, **strange}))
    assert stopped is not None and stopped.status == 403


@pytest.mark.parametrize(
    "headers", [{}, {"sec_fetch_site": "none"}, {"sec_fetch_site": "same-origin"}, {"origin": OWN}]
)
def test_the_own_page_is_let_in(headers):
    assert GUARD.stopped(asked(**headers)) is None


def test_what_changes_something_has_to_say_where_it_comes_from():
    assert GUARD.stopped(asked("POST")).status == 403
    assert GUARD.stopped(asked("POST", origin=OWN)) is None


def test_the_key_becomes_a_cookie_that_no_script_reads_and_no_other_site_sends():
    welcome = GUARD.stopped(asked(path="/", query={"key": "k" * 43}, cookie=None))
    headers = dict(welcome.headers)
    assert (welcome.status, headers["location"]) == (303, "/")
    assert headers["set-cookie"] == f"desk-4321={'k' * 43}; HttpOnly; SameSite=Strict; Path=/"
    assert GUARD.stopped(asked(path="/", query={"key": "wrong"})).status == 403
    assert GUARD.stopped(asked("POST", "/", query={"key": "k" * 43}, cookie=None, origin=OWN)).status == 403


def test_the_job_in_the_first_address_leads_to_its_wall_and_nowhere_else():
    for job in ("moss.toml", "//evil.example", "x\r\nset-cookie: a=b"):
        welcome = GUARD.stopped(asked(path="/", query={"key": "k" * 43, "job": job}))
        place = dict(welcome.headers)["location"]
        assert place.startswith("/wall?job=") and not {*"\r\n:"} & {*place} and place.count("/") == 1


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    folder = tmp_path_factory.mktemp("library")
    (folder / "moss.toml").write_text(LIBRARY)
    with running(folder, "moss.toml") as desk:
        yield desk


def test_the_program_prints_one_address_on_this_machine_with_a_key(desk):
    assert desk.address == f"http://{desk.host}/?key={desk.key}&job=moss.toml"
    assert desk.host.startswith("127.0.0.1:") and len(desk.key) == 43


def test_every_answer_forbids_what_comes_from_elsewhere(desk):
    for path in ("/", "/state?job=moss.toml", "/nothing", "/page/desk.css"):
        for cookie in (None, "none=1"):
            found = desk.asked("GET", path, cookie=cookie)
            assert {name: found.getheader(name) for name, _ in HEADERS} == dict(HEADERS)
            assert found.getheader("server") is None


def test_the_running_server_refuses_strangers(desk):
    own = f"http://{desk.host}"
    assert desk.asked("GET", "/state?job=moss.toml").status == 200
    assert desk.asked("GET", "/state?job=moss.toml", cookie="").status == 403
    assert desk.asked("GET", "/state?job=moss.toml", Host="evil.example").status == 403
    assert desk.asked("POST", "/change?job=moss.toml", b"{}", Origin="http://evil.example").status == 403
    assert desk.asked("POST", "/picture?job=moss.toml&frame=A", b"x", Origin="").status == 403
    assert desk.asked("POST", "/from-template", b"%PDF-", Origin=own, cookie="").status == 403
    assert desk.asked("GET", "/events", cookie="").status == 403


def test_an_upload_beyond_the_bound_is_not_read(desk):
    found = desk.asked("POST", "/from-template", Content_Length=str(MOST_BODY + 1))
    assert found.status == 413


@pytest.mark.parametrize(
    "name",
    ["../moss.toml", "/etc/hosts", "..\\x.toml", "sub/x.toml", "moss.pdf", ".hidden.toml", "", "x\0.toml", "..",
     "a" * 5000 + ".toml"],
)  # fmt: skip
def test_no_job_outside_the_folder_is_opened(tmp_path, name):
    (tmp_path / "in").mkdir()
    (tmp_path / "moss.toml").write_text(LIBRARY)
    desk = AtDesk(tmp_path / "in")
    assert desk.ask("GET", "/state", job=name).status == 422


def test_a_link_that_leads_out_of_the_folder_is_not_followed(tmp_path):
    (tmp_path / "in").mkdir()
    (tmp_path / "out.toml").write_text(LIBRARY)
    desk = AtDesk(tmp_path / "in")
    (tmp_path / "in" / "link.toml").symlink_to(tmp_path / "out.toml")
    assert desk.ask("GET", "/state", job="link.toml").status == 422


@pytest.mark.parametrize(
    ("at", "value"),
    [
        (("job", "frames"), "../frames.csv"), (("job", "measured"), "/etc/passwd"), (("paper", "font"), "/tmp/x.ttf"),
        (("frame", "A", "image"), "../x.png"), (("frame", "A", "image"), "/etc/passwd"),
    ],
)  # fmt: skip
def test_a_job_may_not_name_files_outside_the_folder(tmp_path, at, value):
    desk = AtDesk(tmp_path)
    found = desk.put(*at, value=value, status=422)
    assert "lies outside the job's folder" in found["problem"]
    assert desk.text == LIBRARY


@pytest.mark.parametrize(
    "name", ["../moss.toml", "moss.toml", "/etc/passwd", "x.pdf", "moss-proof.pdf/..", "moss.html"]
)
def test_no_file_is_shown_but_papers_of_the_job(tmp_path, name):
    desk = AtDesk(tmp_path)
    (tmp_path / "x.pdf").write_bytes(b"%PDF-")
    assert desk.ask("GET", "/written", file=name).status == 404


@pytest.mark.parametrize("path", ["/page/../guard.py", "/page/", "/page/.", "/page/desk.py", "/page/%2e%2e/guard.py"])
def test_no_file_is_served_but_those_of_the_page(tmp_path, path):
    assert AtDesk(tmp_path).ask("GET", path).status == 404


def test_ctrl_c_ends_it_with_pages_open_and_nothing_is_lost(tmp_path):
    (tmp_path / "moss.toml").write_text(LIBRARY)
    with running(tmp_path, "moss.toml") as desk:
        listening = desk.asked("GET", "/events?job=moss.toml")
        assert listening.readline().startswith(b"data: ")
        assert desk.change("moss.toml", do="set", sets=[{"at": ["frame", "A", "drop"], "value": "3"}])[0] == 200
        start = time.monotonic()
        code, told = desk.end(signal.SIGINT)
        assert (code, told.splitlines()[-1]) == (0, "The desk is closed. Everything is saved.")
        assert time.monotonic() - start < 20  # seconds on a machine under load, at rest one; our own
    assert 'drop = "3"   # wire pulled taut' in (tmp_path / "moss.toml").read_text()


def test_it_ends_a_while_after_the_last_page_is_closed(tmp_path, monkeypatch):
    from templates_gen.desk import serving

    monkeypatch.setattr(serving, "LINGER", 0.2)
    came, told = threading.Event(), []
    done = threading.Thread(
        target=serving.serve,
        args=(lambda _: None, lambda _: {}, 0, lambda address: (told.append(address), came.set())),
        daemon=True,
    )
    monkeypatch.setattr("uvicorn.Server.capture_signals", lambda self: threading.Lock())  # for the main thread alone
    done.start()
    assert came.wait(10)
    time.sleep(0.6)  # nobody came yet: it waits
    assert done.is_alive()
    from tests.running import look_in

    look_in(told[0])
    done.join(10)
    assert not done.is_alive()

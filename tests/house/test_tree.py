"""The shape of the house: what stands at the top, how long a file gets, what no file may name."""

from tests.house.tree import ROOT, code, texts, tracked

ROOMS = {"README.md", "DEVELOPERS.md", "pyproject.toml", "server", "webapp", "tests", "fixtures"}
MOST_LINES = 300
# Put together here so that this file does not name them either.
REGISTRY_HOSTS = [
    ".".join(parts)
    for parts in (
        ("pypi", "org"),
        ("pythonhosted", "org"),
        ("npmjs", "com"),
        ("npmjs", "org"),
        ("yarnpkg", "com"),
        ("deb", "debian"),
        ("debian", "org"),
        ("proxy", "golang"),
        ("crates", "io"),
    )
]


def test_the_top_level_holds_only_the_rooms_and_dot_files():
    top = {path.parts[0] for path in tracked()}
    assert {name for name in top if not name.startswith(".")} == ROOMS


def test_no_file_of_code_is_longer_than_a_reader_can_hold():
    lengths = {str(path): text.count("\n") for path, text in code()}
    assert {name: lines for name, lines in lengths.items() if lines > MOST_LINES} == {}


def test_no_tracked_file_names_a_package_registry():
    found = [f"{path}: {host}" for path, text in texts() for host in REGISTRY_HOSTS if host in text.lower()]
    assert found == []


def test_every_python_module_opens_with_its_idea():
    silent = [
        str(path) for path, text in code() if path.suffix == ".py" and text and not text.startswith(('"""', "#!"))
    ]
    assert silent == []


def test_the_readme_gives_the_two_commands_as_one_line_each():
    lines = (ROOT / "README.md").read_text().splitlines()
    assert "python3 -m venv .venv && .venv/bin/pip install . && .venv/bin/tarebook serve --demo" in lines
    assert "python3 -m venv .venv && .venv/bin/pip install -e '.[test]' && .venv/bin/python -m tests" in lines


def test_the_ci_runs_the_readme_test_command_as_written():
    lines = (ROOT / ".ci" / "run").read_text().splitlines()
    assert "python3 -m venv .venv && .venv/bin/pip install -e '.[test]' && .venv/bin/python -m tests" in lines

"""Which Node is good enough to build with, and where it is found."""

import find_node
import pytest


@pytest.mark.parametrize("version", ["v20.19.0", "v20.20.2", "v22.12.0", "v24.1.0", "23.0.0\n"])
def test_a_node_that_vite_runs_on_is_taken(version):
    assert find_node.new_enough(version)


@pytest.mark.parametrize("version", ["v18.20.4", "v20.18.3", "v21.7.3", "v22.11.0", "", "no node here"])
def test_an_older_or_unreadable_one_is_not(version):
    assert not find_node.new_enough(version)


def test_without_a_node_on_path_the_one_in_the_wheel_comes_with_its_own_npm(monkeypatch, tmp_path):
    monkeypatch.setenv("PATH", str(tmp_path))
    assert find_node.node_on_path() is None
    found = find_node.find_node()
    assert found is not None
    found.run(["--version"], cwd=tmp_path)


def test_a_failing_npm_stops_with_what_it_said(tmp_path):
    found = find_node.find_node()
    assert found is not None
    with pytest.raises(SystemExit, match="no-such-command"):
        found.run(["no-such-command"], cwd=tmp_path)

"""The house rules read off the source: imports point down, pure modules stay pure, files and functions stay short."""

import ast
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
RANK = {"apiary": 0, "inventory": 1, "planner": 2}
TOP = {
    "README.md",
    "DEVELOPERS.md",
    "manage.py",
    "pyproject.toml",
    "apiary",
    "inventory",
    "planner",
    "tests",
    "fixtures",
}
PURE = (
    "inventory/deadouts/fates.py",
    "inventory/deadouts/freezing.py",
    "inventory/deadouts/tracing.py",
    "inventory/gear.py",
    "inventory/printed/",
    "inventory/sheets",
    "inventory/stack",
    "inventory/reconcile",
    "inventory/value/",
    "apiary/losses.py",
    "apiary/year.py",
    "planner/beliefs",
    "planner/season",
    "planner/projection",
    "planner/requirement",
    "planner/sizing",
    "planner/programme",
    "planner/solution",
    "planner/plan",
    "planner/trial",
    "planner/workbook",
    "planner/yardform",
    "planner/after/",
    "planner/bench/instances.py",
    "planner/bench/naive",
    "apiary/bench/figures.py",
)
FORBIDDEN_NAMES = re.compile(r"^(get_|do_|handle_)|(^|_)(utils?|helpers?|managers?|services?|common)$")
DJANGO_HOOKS = {"get_queryset", "get_context_data", "get_absolute_url", "get_FOO_display"}
DJANGO_HOOKS |= {
    "handle_starttag",
    "handle_endtag",
    "handle_data",
}  # Python's own reader of pages calls these


def sources():
    """Every Python file of the three packages, migrations left out."""
    return [
        path
        for package in RANK
        for path in sorted((ROOT / package).rglob("*.py"))
        if "migrations" not in path.parts
    ]


def imports(tree):
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports are written whole, never relative"
            yield node.module


def name_of(path):
    return str(path.relative_to(ROOT))


@pytest.fixture(scope="module")
def trees():
    return {path: ast.parse(path.read_text(encoding="utf-8")) for path in sources()}


def test_imports_point_down_between_packages(trees):
    wrong = [
        f"{name_of(path)} imports {module}"
        for path, tree in trees.items()
        for module in imports(tree)
        if RANK.get(module.split(".")[0], -1) > RANK[path.relative_to(ROOT).parts[0]]
    ]
    assert wrong == []


def level_of(parts):
    """How high a module stands inside its package: urls over views over forms over acts, models below all."""
    name = parts[1].removesuffix(".py") if len(parts) > 1 else ""
    return {
        "gear": 0,
        "losses": 0,
        "errors": 0,
        "models": 1,
        "forms": 4,
        "views": 5,
        "urls": 6,
        "admin": 5,
        "management": 5,
        "templatetags": 5,
    }.get(name, 2)


def test_imports_point_down_inside_a_package(trees):
    wrong = []
    for path, tree in trees.items():
        parts = path.relative_to(ROOT).parts
        for module in imports(tree):
            other = module.split(".")
            same_package = other[0] == parts[0] and len(other) > 1
            if (
                same_package
                and other[1] != parts[1].removesuffix(".py")
                and level_of(tuple(other)) > level_of(parts)
            ):
                wrong.append(f"{name_of(path)} imports {module}")
    assert wrong == []


def test_no_import_hides_in_a_function(trees):
    wrong = [
        f"{name_of(path)}:{inner.lineno}"
        for path, tree in trees.items()
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef)
        for inner in ast.walk(node)
        if isinstance(inner, ast.Import | ast.ImportFrom)
    ]
    assert wrong == []


def test_pure_modules_know_neither_django_nor_clock_nor_files(trees):
    banned = (
        "django",
        "time",
        "pathlib",
        "sqlite3",
        "random",
        "apiary",
        "inventory.models",
        "inventory.ledger",
    )
    wrong = [
        f"{name_of(path)} imports {module}"
        for path, tree in trees.items()
        if name_of(path).startswith(PURE)
        for module in imports(tree)
        if module.split(".")[0] in banned or module in banned
    ]
    allowed = re.compile(r"planner/solution/.* imports time$")  # the solver's own seconds
    assert [line for line in wrong if not allowed.match(line)] == []


def test_files_and_functions_stay_short(trees):
    long_files = [name_of(p) for p in trees if p.read_text(encoding="utf-8").count("\n") > 400]
    long_functions = [
        f"{name_of(path)}:{node.lineno} {node.name}"
        for path, tree in trees.items()
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.end_lineno - node.lineno + 1 > 60
    ]
    assert (long_files, long_functions) == ([], [])


def test_every_module_opens_with_what_it_takes_and_gives(trees):
    wrong = [
        name_of(path)
        for path, tree in trees.items()
        if path.read_text(encoding="utf-8").strip() and not ast.get_docstring(tree)
    ]
    assert wrong == []


def test_names_are_verbs_and_nouns_of_the_trade(trees):
    wrong = [
        f"{name_of(path)}:{node.lineno} {node.name}"
        for path, tree in trees.items()
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef | ast.ClassDef)
        and FORBIDDEN_NAMES.search(node.name)
        and node.name not in DJANGO_HOOKS
    ]
    files = [name_of(p) for p in trees if FORBIDDEN_NAMES.search(p.stem)]
    assert (wrong, files) == ([], [])


def test_the_top_level_is_exactly_the_agreed_one():
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    ).stdout.split("\n")
    top = {line.split("/")[0] for line in listed if line}
    assert {name for name in top if not name.startswith(".")} == TOP


def mirrored(path):
    """Where the test of a module lies: the same path under tests/, test_ before the last name, or a folder's."""
    parts = path.relative_to(ROOT).parts
    return ROOT.joinpath("tests", *parts[:-1], f"test_{parts[-1]}")


def test_every_module_has_its_test_at_the_same_path():
    untested = []
    for path in sources():
        parts = path.relative_to(ROOT).parts
        if path.name == "__init__.py" or parts[1] in ("settings.py", "wsgi.py", "urls.py", "admin.py"):
            continue
        whole_folder = [ROOT.joinpath("tests", *parts[:-1][: n + 1]) for n in range(1, len(parts) - 1)]
        as_one = any(folder.with_name(f"test_{folder.name}.py").exists() for folder in whole_folder)
        if not mirrored(path).exists() and not as_one:
            untested.append(name_of(path))
    assert untested == []

# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The commands without a window or a display, and what each ends with. Usage: test_command.py PROGRAM
NOTEBOOK. Prints TAP."""

import json
import os
import shutil
import subprocess
import sys
import tempfile

PROGRAM, DEMO = map(os.path.realpath, sys.argv[1:3])
BLEND = "Pan patty"
# No display at all: a command must not ask for one.
ENVIRONMENT = {key: value for key, value in os.environ.items()
               if key not in ("DISPLAY", "WAYLAND_DISPLAY")}


def command(*words, code=0, says=""):
    done = subprocess.run([PROGRAM, *words], env=ENVIRONMENT, text=True, timeout=120,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    assert done.returncode == code, (words, done.returncode, done.stderr)
    assert says in done.stderr, (words, done.stderr)
    return done


def head(path, n=5):
    with open(path, "rb") as file:
        return file.read(n)


def text(path):
    with open(path, encoding="utf-8") as file:
        return file.read()


def open_data_goes_out_and_in():
    command("export", "demo.forcemeat", "out.json")
    assert json.loads(text("out.json"))["format"] == "forcemeat open data"
    assert os.path.isdir("out-photos")
    command("import", "out.json", "again.forcemeat")
    command("export", "again.forcemeat", "again.json")
    assert text("out.json") == text("again.json")
    command("import", "out.json", "again.forcemeat", code=1)
    command("export", "demo.forcemeat", "part.json", "--blend", BLEND, "--version", "2")
    part = json.loads(text("part.json"))
    assert len(part["blends"]) == 1 and part["versions"][-1]["number"] == 2
    assert [row["key"] for row in part["settings"]] == ["invented"]


def a_damaged_notebook_is_recovered():
    with open("demo.forcemeat", "rb") as file:
        whole = bytearray(file.read())
    middle = len(whole) // 4096 // 2 * 4096
    whole[middle:middle + 4096] = bytes(4096)
    with open("torn.forcemeat", "wb") as file:
        file.write(whole)
    done = command("recover", "torn.forcemeat", "mended.forcemeat")
    assert "are in the new notebook" in done.stdout, done.stdout
    command("export", "mended.forcemeat", "mended.json")
    command("recover", "torn.forcemeat", "mended.forcemeat", code=1, says="is there already")


def bad_input_ends_with_one():
    command("export", "nothing.forcemeat", "x.json", code=1)
    command("export", "demo.forcemeat", "x.json", "--blend", "No such", code=1, says="No such")
    command("export", "demo.forcemeat", "x.json", "--blend", BLEND, "--version", "99", code=1,
            says="99")
    with open("bad.json", "w", encoding="utf-8") as file:
        file.write("{")
    command("import", "bad.json", "bad.forcemeat", code=1, says="Nothing was imported")
    assert not os.path.exists("bad.forcemeat") and not os.path.exists("x.json")


def bad_questions_end_with_two():
    command("export", "demo.forcemeat", code=2)
    command("label", "demo.forcemeat", "x.pdf", code=2, says="--blend")
    command("export", "demo.forcemeat", "x.json", "--version", "1", code=2, says="--blend")
    command("label", "demo.forcemeat", "x.pdf", "--blend", BLEND, "--rules", "moon", code=2,
            says="us_retail")
    command("batch-sheet", "demo.forcemeat", "x.pdf", "--blend", BLEND, "--kind", "moon", code=2)
    command("csv", "demo.forcemeat", "x", "--no-such-option", code=2)


def tables_are_written():
    command("csv", "demo.forcemeat", "tables")
    assert sorted(os.listdir("tables")) == ["experiments.csv", "formulas.csv", "nutrition.csv",
                                            "tastings.csv"]
    assert head("tables/formulas.csv", 3) == b"\xef\xbb\xbf"
    command("csv", "demo.forcemeat", "tables", "--comma")
    lines = text("tables/formulas.csv").splitlines()
    assert "invented" in lines[0] and ";" in lines[1], lines[:2]


def sheets_and_cards_are_written():
    for kind in ("batch", "cook", "specification", "reader"):
        command("batch-sheet", "demo.forcemeat", kind + ".pdf", "--blend", BLEND, "--version", "1",
                "--kind", kind)
        assert head(kind + ".pdf") == b"%PDF-"
    command("batch-sheet", "demo.forcemeat", "page.html", "--blend", BLEND, "--kind", "page")
    assert "application/ld+json" in text("page.html")
    assert "<p>Everything in this notebook is invented" in text("page.html")


def a_label_is_refused_by_name():
    command("label", "demo.forcemeat", "label.pdf", "--blend", BLEND, "--rules", "us_meat", code=1,
            says="Sodium: not known for Beef trim 50/50")
    assert not os.path.exists("label.pdf")


CASES = (open_data_goes_out_and_in, a_damaged_notebook_is_recovered, bad_input_ends_with_one,
         bad_questions_end_with_two, tables_are_written, sheets_and_cards_are_written, a_label_is_refused_by_name)


def main():
    print(f"1..{len(CASES)}")
    failed = 0
    with tempfile.TemporaryDirectory() as folder:
        os.chdir(folder)
        shutil.copy(DEMO, "demo.forcemeat")
        for number, case in enumerate(CASES, 1):
            name = case.__name__.replace("_", " ")
            try:
                case()
                print(f"ok {number} - {name}")
            except (AssertionError, OSError, ValueError, subprocess.SubprocessError) as error:
                failed += 1
                print(f"not ok {number} - {name}")
                print("# " + str(error).replace("\n", "\n# "))
        os.chdir("/")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())

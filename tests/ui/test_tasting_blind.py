# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Sheets of a sealed tasting, typed by code and filled in at the desk: nobody is told who is who."""

import re

from harness import Atspi, run, wait_for
from keyboard import walk_both_ways
from tasting_steps import (TASTERS, add_taster, arrange_tasting, choose_samples, give_reason,
                           new_tasting, sealed_tasting)

VERSION = re.compile(r"\bversion\s*\d", re.IGNORECASE)


def all_texts(program):
    """Every name and description that the accessible tree holds, shown or not."""
    return [text for node in program.tree().below() for text in (node.name, node.description)
            if text]


def assert_no_identity(program, samples):
    told = [text for text in all_texts(program)
            if any(name in text for name in samples) or VERSION.search(text)]
    assert not told, told


def assert_no_code_beside_a_name(program, samples, codes):
    told = [text for text in all_texts(program)
            if any(name in text for name in samples) and any(code in text for code in codes)]
    assert not told, told


def fields(program, what):
    """Codes of the cups for which @what is asked, in serving order."""
    prefix = what + " of "
    names = (node.name for node in program.all(prefix, contains=True))
    return list(dict.fromkeys(name[len(prefix):] for name in names
                              if re.fullmatch(re.escape(prefix) + r"\d{3}", name)))


def type_ranks(program, places):
    codes = wait_for(lambda: fields(program, "rank order"), "cups to rank")
    assert len(codes) == len(places), codes
    for code, place in zip(codes, places):
        program.type_into(f"rank order of {code}", place)
    return codes


def a_sheet_is_typed_by_code(start, folder):
    program = start("--demo", "--separate")
    samples = sealed_tasting(program)
    codes = type_ranks(program, "1234")
    program.says("This sheet is whole.")
    assert_no_code_beside_a_name(program, samples, codes)
    assert not [text for text in all_texts(program) if any(name in text for name in samples)]
    assert not program.unnamed(), program.unnamed()
    program.screenshot("tasting-sheets")

    program.type_into(f"rank order of {codes[0]}", "7")
    program.find("7", contains=True)
    program.button("Sheet Is In")
    program.find("A Field Holds No Mark", contains=True, showing=False)
    program.button("Close")
    program.reads(f"rank order of {codes[0]}", "7")
    program.type_into(f"rank order of {codes[0]}", "2")
    program.button("Sheet Is In")
    program.says(f"Sheet of {TASTERS[0]}: in")
    program.says("Sealed, 1 of 3 sheets in")

    program.button("Next Taster")
    program.says(f"Sheet of {TASTERS[1]}: waited for")
    program.says("Not filled in yet: rank order")
    program.button("Sheet Is In")
    program.find("Take the Sheet with Gaps?", contains=True, showing=False)
    program.button("Keep Waiting")
    program.button("Missing")
    program.says(f"Sheet of {TASTERS[1]}: missing")
    program.button("Next Taster")
    type_ranks(program, "1134")
    program.button("Dropped Out")
    program.says(f"Sheet of {TASTERS[2]}: dropped out")
    program.says("Sealed, 1 of 3 sheets in")
    program.quit()


def taste_cups(program, taster, codes):
    """Through the pages of each cup to that of the order."""
    for number in range(1, len(codes) + 1):
        program.find(f"{taster}, step {number} of 6")
        heading = program.says("Taste sample ")
        assert heading[-3:] in codes, heading
        if number == 1:
            program.type_into(f"Remark on {heading[-3:]}", "juicy")
        program.button("Next")
    program.find("Put the samples in order")


def order_cups(program, codes):
    for code in codes:
        program.button(code)
        program.find(f": {code}", contains=True)


def blind_mode_tells_nobody_who_is_who(start, folder):
    program = start("--demo", "--separate")
    samples = sealed_tasting(program)
    codes = wait_for(lambda: fields(program, "rank order"), "codes")
    program.button("Blind Mode")
    program.find("Before anybody tastes")
    program.gone("Tastings")
    told = [text for text in all_texts(program) if any(name in text for name in samples)]
    assert told and all(name in told[0] for name in samples), told
    assert_no_code_beside_a_name(program, samples, codes)
    assert not program.find("Next", role="push button").has_state(Atspi.StateType.SENSITIVE)
    program.screenshot("tasting-blind-record")
    give_reason(program)
    program.button("Next")
    program.find("Who tastes?")
    program.says("Allergens stated for the samples: ")
    assert [frame.name for frame in program.tree().children] == ["Tasting"]
    assert_no_identity(program, samples)
    program.screenshot("tasting-blind-who")

    for number, taster in enumerate(TASTERS):
        program.button(taster)
        program.find(f"{taster}, step 1 of 6")
        assert_no_identity(program, samples)
        assert not program.unnamed(), program.unnamed()
        program.screenshot("tasting-blind-cup")
        taste_cups(program, taster, codes)
        assert_no_identity(program, samples)
        order_cups(program, codes if number < 2 else codes[::-1])
        program.screenshot("tasting-blind-order")
        program.button("Next")
        program.find("All questions are answered.")
        program.button("Hand In")
        program.find(f"Thank you, {taster}. Your sheet is in.")
        program.gone(taster, role="push button")
    program.find("No sheet is waited for")
    assert_no_identity(program, samples)

    program.press("Escape")
    program.find("End Blind Mode?", contains=True, showing=False)
    assert_no_identity(program, samples)
    program.button("Keep Tasting")
    program.gone("End Blind Mode?", contains=True)
    program.press("Escape")
    program.find("End Blind Mode?", contains=True, showing=False)
    program.button("End Blind Mode")
    record = program.says("Sealed, all sheets in") and program.says("Samples arranged and sealed")
    assert record.count("“a test of the panel”") == 2, record
    assert_no_code_beside_a_name(program, samples, codes)
    program.quit()


def a_grid_is_typed_as_it_lies_on_paper(start, folder):
    """Liking down the samples, then the order, then remarks; the codes in the taster's own order."""
    program = start("--demo", "--separate")
    new_tasting(program)
    choose_samples(program)
    for name in TASTERS:
        add_taster(program, name)
    program.press_in(program.find("9-point liking", role="check box"))
    arrange_tasting(program)
    program.button("Next Taster")
    program.says(f"Sheet of {TASTERS[1]}: waited for")
    codes = wait_for(lambda: (ranked := fields(program, "rank order"))
                     and fields(program, "9-point liking") == ranked and ranked,
                     "the same samples to rank and to score")
    for score in "7586":
        program.type_keys(score)
        program.press("Return")
    for place in "2413":
        program.type_keys(place)
        program.press("Down")
    program.type_keys("dry")
    program.press("Down", "Up")
    program.type_keys("and ")
    for code, score, place in zip(codes, "7586", "2413"):
        program.reads(f"9-point liking of {code}", score)
        program.reads(f"rank order of {code}", place)
    wait_for(lambda: "and" in program.read(f"Remark on {codes[0]}"), "more of the remark")
    assert "dry" in program.read(f"Remark on {codes[0]}")
    program.says("like moderately")
    program.says("This sheet is whole.")
    program.screenshot("tasting-grid")
    program.quit()


def the_key_is_shown_to_a_helper_only(start, folder):
    program = start("--demo", "--separate")
    samples = sealed_tasting(program)
    program.button("Key Sheet…")
    program.button("Show to a Helper…")
    program.type_into("Name of the helper", TASTERS[0].lower())
    program.button("Show the Key")
    program.says("tastes, so the key is not shown")
    program.button("Key Sheet…")
    program.button("Show to a Helper…")
    program.type_into("Name of the helper", "Dot")
    program.button("Show the Key")
    program.find("The key, for Dot only")
    program.gone("Tastings")
    key = program.says("Which code is which sample")
    assert all(name in key for name in samples), key
    program.screenshot("tasting-key")
    walk_both_ways(program)
    program.press("Escape")
    program.says("Key shown on the screen to a helper")
    assert not [text for text in all_texts(program) if any(name in text for name in samples)]
    program.quit()


def papers_go_into_files(start, folder):
    program = start("--demo", "--separate")
    samples = sealed_tasting(program)
    program.button("Save Sheets…")
    program.choose_file("Save Taster Sheets", f"{folder}/sheets.pdf", ".pdf")
    program.says("Saved as")
    program.button("Key Sheet…")
    program.find("It tells which code is which sample", contains=True, showing=False)
    program.button("Save as PDF…")
    program.choose_file("Save Key Sheet", f"{folder}/key.pdf", ".pdf")
    program.says("Key sheet printed or saved")
    assert not [text for text in all_texts(program) if any(name in text for name in samples)]
    for name in ("sheets", "key"):
        with open(f"{folder}/{name}.pdf", "rb") as file:
            assert file.read(4) == b"%PDF"
    program.quit()


run(a_sheet_is_typed_by_code, a_grid_is_typed_as_it_lies_on_paper,
    blind_mode_tells_nobody_who_is_who, the_key_is_shown_to_a_helper_only, papers_go_into_files)

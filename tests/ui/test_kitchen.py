# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The cook screen: four portions from the keyboard, a kill in the middle, and what the log keeps."""

import os
import re
import threading
import time

from harness import run, wait_for
from steps import first_blend, save_version, show_version

TITLE = "Title of the experiment"


def new_experiment(program):
    first_blend(program)
    program.click("Plan the Process…", role="push button")
    program.type_into("Meat temperature at grinding", "4")
    program.type_into("Raw diameter", "110")
    program.type_into("Surface temperature", "200")
    program.press("Escape")
    program.gone("Plate of pass 1")
    save_version(program, 1, "To cook")
    show_version(program, 1)
    program.page("Experiments")
    program.click("New experiment", role="push button")
    wait_for(lambda: program.read(TITLE).startswith("Trial "), "new experiment")


def to_the_pan(program):
    program.click("Cook…", role="push button")
    program.find("Portion 1: ", contains=True)


def on_the_heat_s(program):
    """Seconds that portion 1 says it is on the heat."""
    def look():
        return next((found for node in program.all(" on the heat", contains=True)
                     if (found := re.match(r"(\d+):(\d\d) on", node.name))), None)

    minutes, seconds = wait_for(look, "time on the heat").groups()
    return 60 * int(minutes) + int(seconds)


class generated_probe:
    """A pipe that somebody writes readings, a greeting and rubbish into."""

    LINES = ("probe ready", "40.0", "0:01 41.0", "999", "41.5")

    def __init__(self, folder):
        self.path = folder + "/probe"

    def __enter__(self):
        os.mkfifo(self.path)
        self.writer = threading.Thread(target=self.write, daemon=True)
        self.writer.start()
        return self.path

    def write(self):
        with open(self.path, "w", encoding="ascii") as pipe:
            for line in self.LINES:
                print(line, file=pipe, flush=True)
                time.sleep(1.1)

    def __exit__(self, *error):
        self.writer.join()


def enter(program, key, number):
    program.press(key)
    program.button("Enter") if number is None else program.type_keys(number)
    program.press("Return")


def four_portions_outlive_a_kill(start, folder):
    program = start()
    new_experiment(program)
    to_the_pan(program)
    program.says("Next on the heat: portion 1 of 6")
    program.says("never says that food is done or safe")
    program.says("71.1 °C (160 °F)")
    for portion in range(1, 5):
        program.says(f"Space: portion {portion} on the heat")
        program.press("space")
        program.find(f"Portion {portion}: First side")
    program.says("Space: turned portion 1")
    program.press("space")
    program.find("Portion 1: Second side")
    program.press("1")
    enter(program, "c", "61.5")
    program.says("Portion 1: core 61.5 °C")
    program.screenshot("kitchen-pan")
    assert not program.unnamed(), program.unnamed()
    with generated_probe(folder) as path:
        program.press("2", "b")
        program.type_into("Where the probe is heard", path)
        program.button("Listen: the probe is in portion 2")
        program.says("2 lines refused")
        program.screenshot("kitchen-probe")
        program.press("Escape")
        program.says("Core 41.5 °C, read ")
        program.says("Estimate before any reading: ")
        program.says("No estimate. The readings lie ")
    before = on_the_heat_s(program)
    program.kill()

    program = start()
    program.page("Experiments")
    program.press_in(program.find("Trial 1\n", contains=True, role="label"))
    program.reads(TITLE, "Trial 1")
    to_the_pan(program)
    program.find("Portion 1: Second side")
    program.find("Portion 4: First side")
    program.says("Core 61.5 °C, read ")
    program.says("Core 41.5 °C, read ")
    assert on_the_heat_s(program) > before
    program.press("1")
    program.press("o")
    program.find("Portion 1: Resting")
    program.press("1")
    enter(program, "k", "141")
    program.press("m")
    program.type_keys("Smoked")
    program.press("Return")
    program.says("Smoked")
    program.screenshot("kitchen-rest")
    program.press("u")
    program.says("Smoked (taken back)")
    program.press("Escape")
    program.gone("Portion 1: Resting")
    program.reads("Cooked mass of patty 1", "141")
    program.reads("Core temperature of reading 1", "61.5")
    wait_for(lambda: float(program.read("Minutes on the first side") or 0) > 0, "time on a side")
    program.quit()


def weights_are_ticked_off(start, folder):
    program = start()
    new_experiment(program)
    to_the_pan(program)
    program.press("w")
    program.find("Chuck short ribs", contains=True)
    program.press("space")
    program.type_keys("12x")
    program.press("Return")
    program.says("cannot be read")
    program.press("ctrl+a")
    program.type_keys("650")
    program.press("Return")
    program.says("to weigh: Ground beef 80/20")
    program.type_keys("431.5")
    program.screenshot("kitchen-pad")
    program.press("Return")
    program.says("weighed 431.5 g")
    program.screenshot("kitchen-weigh")
    program.press("w", "Escape")
    program.says("weighed 1081.5 g so far")
    program.quit()


run(four_portions_outlive_a_kill, weights_are_ticked_off)

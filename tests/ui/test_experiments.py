"""The experiment log: a making is recorded, corrected, saved as it is typed and found again."""

from harness import run

TITLE = "Title of the experiment"


def open_first(program):
    """Shows the log of the demo's first blend and clicks its first row."""
    program.page("Experiments")
    program.press_in(program.find("\nVersion ", contains=True, role="label"))
    program.field(TITLE)


def every_control_of_an_experiment_has_a_name(start, folder):
    program = start("--demo", "--separate")
    open_first(program)
    program.screenshot("experiment")
    assert not program.unnamed(), program.unnamed()
    program.says("Ground meat caution")
    program.says("USDA FSIS")
    program.quit()


def an_edit_is_there_after_a_restart(start, folder):
    program = start("--demo", "--separate")
    open_first(program)
    program.type_into(TITLE, "Renamed while nobody looked")
    program.type_into("Raw mass of patty 1", "172,5")
    program.quit()
    program = start("--separate")
    program.page("Experiments")
    program.says("Renamed while nobody looked")
    open_first(program)
    program.says("4.2 % too light")
    program.quit()


def bad_numbers_are_flagged_and_lose_nothing(start, folder):
    program = start("--demo", "--separate")
    open_first(program)
    good = program.says("6 patties weighed raw")
    for text in ("-3", "nan", "1e99", "twelve"):
        program.type_into("Raw mass of patty 1", text)
        program.says(good)
    program.type_into("Number of grinder passes", "1.5")
    program.says("counted in whole numbers")
    program.quit()


run(every_control_of_an_experiment_has_a_name,
    an_edit_is_there_after_a_restart,
    bad_numbers_are_flagged_and_lose_nothing)

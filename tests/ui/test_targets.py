"""Meeting the targets and correcting a batch, as a person with a keyboard would."""

from harness import run


def open_targets(start):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.click("Meet the Targets…", role="push button")
    program.find("Solve", role="push button")
    return program


def set_fat(program, least, most):
    """Types into the window's own entries; the page below it has some of the same name."""
    window = program.find("Meet the Targets", role="frame")
    for end, text in (("Fat, at least", least), ("Fat, at most", most)):
        next(node for entry in program.all(end, within=window) for node in entry.below()
             if node.has("EditableText")).set_text(text)


def a_fat_band_is_met(start, folder):
    program = open_targets(start)
    set_fat(program, "19,9", "20.1")
    program.click("Solve", role="push button")
    program.says("New lean point 80/20")
    program.says("Probability that fat is within 19.9 to 20.1 %")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("targets-met")
    program.click("Use This Blend", role="push button")
    program.gone("Solve", role="push button")
    program.says("80/20")
    program.quit()


def what_cannot_be_met_is_said(start, folder):
    program = open_targets(start)
    set_fat(program, "90", "95")
    program.click("Solve", role="push button")
    program.says("The targets cannot be met together")
    program.says("it would work with")
    program.screenshot("targets-not-met")
    program.press("Escape")
    program.quit()


def a_batch_is_corrected(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.click("Correct the Batch…", role="push button")
    program.says("What to add")
    program.type_into("Fat to aim for", "20")
    program.type_into("Fat by test of the ground mix", "17,5")
    program.says("20.0 % fat.")
    program.type_into("Fat by test of the ground mix", "20")
    program.says("Nothing to add")
    program.type_into("Fat by test of the ground mix", "much")
    program.says("Correct the marked numbers first.")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("correct")
    program.press("Escape")
    program.quit()


run(a_fat_band_is_met, what_cannot_be_met_is_said, a_batch_is_corrected)

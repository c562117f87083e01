"""The whole story: from an empty notebook to a compare of two variants after a restart."""

from harness import run


def every_control_has_a_name(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    assert not program.unnamed(), program.unnamed()
    program.quit()


run(every_control_has_a_name)

"""Planning a blind tasting, as a person with a keyboard would."""

from harness import run, wait_for

SAMPLES = ("eight heart", "bought trim", "mix overnight", "hotter pulled")
TASTERS = ("Ada", "Bo", "Cem")


def new_tasting(program):
    program.page("Tastings")
    program.button("New Tasting")
    program.says("A tasting needs at least two samples")
    program.type_into("Title of the tasting", "Friday panel")
    program.find("Friday panel", role="list item", contains=True)


def add_taster(program, name):
    program.type_into("Add a taster by name", name)
    program.press_in(program.field("Add a taster by name"), "Return")
    program.reads("Add a taster by name", "")


def choose_samples(program):
    """Takes one experiment of each version and returns the names that the samples got."""
    program.button("Choose Experiments…")
    program.find("0 chosen", contains=True)
    program.find("Experiment · ", role="label", contains=True)
    for number, words in enumerate(SAMPLES, 1):
        program.type_keys(words)
        program.press("Return")
        program.find(f"{number} chosen", contains=True)
    program.button("Take")
    program.gone("Choose What to Taste", role="frame")
    prefix = "Take out "

    def taken():
        names = [node.name[len(prefix):] for node in program.all(prefix, contains=True)
                 if node.role == "push button"]
        return names if len(names) == len(SAMPLES) else None
    return wait_for(taken, "four samples")


def undo_of_toast(program):
    """The header has such a button as well; the toast lies over the page and comes after it."""
    buttons = list(program.all("Undo", role="push button", contains=True))
    return buttons[-1] if len(buttons) > 1 else None


def arrange(program):
    program.button("Arrange the Samples")
    program.find("From then on samples", contains=True)
    program.button("Arrange and Seal")
    program.says("Sealed, 0 of 3 sheets in")


def a_plan_is_arranged_and_sealed(start, folder):
    program = start("--demo", "--separate")
    new_tasting(program)
    samples = choose_samples(program)
    assert len(set(samples)) == len(SAMPLES), samples
    for name in TASTERS:
        add_taster(program, name)
    program.says("4 samples · 3 tasters")
    program.says("What This Panel Can Show")
    program.screenshot("tasting-plan")
    assert not program.unnamed(), program.unnamed()
    arrange(program)
    program.says("Samples arranged and sealed")
    tree = program.tree()
    told = [text for node in tree.below() for text in (node.name, node.description)
            if any(name in text for name in samples)]
    assert not told, told
    program.screenshot("tasting-sealed")
    program.button("Open the Codes")
    program.find("3 sheets are not in", contains=True)
    program.type_into("Reason for opening early", "the grill broke")
    program.button("Open Early")
    program.says("Opened with 0 of 3 sheets in")
    program.says("“the grill broke”")
    program.quit()
    program = start("--separate")
    program.page("Tastings")
    row = program.find("Friday panel", role="list item", contains=True)
    assert "Opened with 0 of 3 sheets in" in row.name, row.name
    program.quit()


def a_bad_plan_says_what_is_wrong(start, folder):
    program = start("--demo", "--separate")
    new_tasting(program)
    program.type_into("Add a sample from outside by name", "Bought patty")
    program.press_in(program.field("Add a sample from outside by name"), "Return")
    program.find("Take out Bought patty")
    program.says("A tasting needs at least two samples")
    program.type_into("Add a sample from outside by name", "Second patty")
    program.press_in(program.field("Add a sample from outside by name"), "Return")
    program.says("A tasting needs at least one taster")
    add_taster(program, "Ada")
    add_taster(program, "Ada")
    program.says("Two tasters are called “Ada”")
    program.type_into("Most samples one taster gets", "1")
    program.find("is too small", contains=True)
    program.click("Take out Ada", role="push button")
    program.gone("Two tasters are called", contains=True)
    program.press_in(program.find("Just about right", role="check box"))
    program.says("Say what is to be just about right")
    program.button("salt")
    program.find("Do not ask about salt")
    program.gone("Say what is to be just about right", contains=True)
    program.says("Just-about-right answers are counted")
    program.click("Remove this tasting", role="push button")
    wait_for(lambda: undo_of_toast(program), "Undo in a toast").act()
    program.find("Friday panel", role="list item", contains=True)
    program.find("Take out Bought patty")
    program.quit()


run(a_plan_is_arranged_and_sealed, a_bad_plan_says_what_is_wrong)

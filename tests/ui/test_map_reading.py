"""What a map shows: a model of ratings, its best blend, the next one to try, and refusals."""

import glob
import sqlite3

from harness import run, wait_for

CHUCK = "Beef, chuck, blade roast"
BRISKET = "Beef, brisket, point half"
RIB = "Beef, chuck, short ribs"
# Invented ratings: highest where the mixture is divided like this.
BEST = {CHUCK: 0.55, BRISKET: 0.20, RIB: 0.25}


def choose_role(program, name):
    def shown():
        return next((node for node in program.all(role="combo box") if node.name.startswith(name)),
                    None)

    program.press_in(wait_for(shown, f"choice of {name!r}"), "Down", "Return")
    wait_for(lambda: any(node.name.startswith(name) and node.name.endswith("Changes alone")
                         for node in program.all()), f"{name!r} as a component")


def bounds(program, name, least, most):
    program.type_into("Least " + name, least, contains=True)
    program.type_into("Most " + name, most, contains=True)


def map_of_three(program):
    program.page("Map")
    program.button("New Map")
    program.says("Choose 2 to 6 components")
    for name in (CHUCK, BRISKET, RIB):
        choose_role(program, name)
    bounds(program, CHUCK, "40", "70")
    bounds(program, BRISKET, "10", "35")
    bounds(program, RIB, "15", "45")
    program.says("stays at 7.4 % of the blend.")


def versions_of_trials(program):
    program.page("Trials")
    program.says("Enough for the linear model")
    program.button("Draw Up the Trials")
    program.find("Trial 1, corner (vertex)", role="list item")
    program.button("Make All Versions")
    # The message of it passes by; the row of the trial stays.
    program.says("Version 8, not tasted yet", deadline_s=90)


def notebook_of(folder):
    for path in glob.glob(folder + "/**/*", recursive=True):
        try:
            book = sqlite3.connect(path)
            book.execute("SELECT 1 FROM map_points")
            return book
        except sqlite3.Error:
            continue
    raise AssertionError("no notebook in " + folder)


def rate_the_trials(folder):
    """Writes two cooks of each trial, rated and weighed; to enter them all by hand would take the test long."""
    book = notebook_of(folder)
    names = [row[0] for row in book.execute("SELECT name FROM map_components ORDER BY position")]
    best = [share for name in names for part, share in BEST.items() if name.startswith(part)]
    trials = book.execute("SELECT version_id, x_1, x_2, x_3 FROM map_points").fetchall()
    for n, (version, *x) in enumerate(trials):
        off = sum((a - b) ** 2 for a, b in zip(x, best))
        for turn in (0, 1):
            rating = max(1, min(10, round(9.2 - 60 * off) - turn * (n % 2)))
            cook = book.execute("INSERT INTO experiments (version_id, blend_id, made_at, rating) "
                                "SELECT id, blend_id, 1760000000, ? FROM versions WHERE id = ?",
                                (rating, version)).lastrowid
            loss = 20 + 15 * x[0] + turn
            book.execute("INSERT INTO patties VALUES (?, 0, 100, ?)", (cook, 100 - loss))
    book.commit()
    book.close()


def what_it_shows(program):
    program.page("Map")
    program.page("What It Shows")


def goals_are_joined(program):
    program.click("Several Goals at Once")
    program.says("Choose two or more responses.")
    program.click("Rating, 1 to 10", role="check box")
    program.click("Cook loss", role="check box")
    program.says("Predicted best for all goals: ")
    program.find("Make a Version: Best for All Goals")
    program.type_into("Rating, 1 to 10, Upper end", "2")
    program.says("give a lower end below the upper end")


def ratings_become_a_map(start, folder):
    program = start("--demo", "--separate")
    map_of_three(program)
    versions_of_trials(program)
    program.quit()
    rate_the_trials(folder)
    program = start("--separate")
    what_it_shows(program)
    program.says("For rating of a blend it has not seen")
    best = program.says("Predicted best: ")
    assert "confirm it in a blind tasting" in best, best
    program.says("Least known: ")
    picture = program.find("Map of three components")
    assert "predicted rating lies between" in picture.description, picture.description
    program.find("Traces of rating")
    program.click("Map as a table")
    program.find("Version 8")
    program.click("Traces as a table")
    program.click("Numbers of the model")
    program.says("Leave-one-out error")
    program.click("Method and source")
    program.says("Scheffé (1958")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("map-reading")
    goals_are_joined(program)
    program.quit()


def too_few_trials_are_said(start, folder):
    """The demo's base version was cooked once: that is no map."""
    program = start("--demo", "--separate")
    map_of_three(program)
    program.page("What It Shows")
    refusal = program.says("A linear model of 3 components has 3 terms")
    assert "Make and measure at least 4 more" in refusal, refusal
    program.gone("Predicted best", contains=True)
    program.gone("Map of three components")
    assert not program.unnamed(), program.unnamed()
    program.quit()


if __name__ == "__main__":
    run(ratings_become_a_map, too_few_trials_are_said)

# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Kinds of animal for the rows of data/sr28/foods.tsv, by data/sr28/species.tsv.

Rules are tried in the order of the file; those of a row's own number come first. A rule's `words`
are a regular expression that is looked for in the readable name, in lower case. `species` is

- a kind of src/core/composition/fm-species.h: the name holds this kind;
- drop: what matched is taken out of the name before later rules look at it;
- stop-KIND: the row is of this kind, whatever else its name holds;
- unstated: meat, of a kind that the name does not tell, unless another rule names one;
- default-KIND: what a row is when no rule found anything; no words: any row of the group.

Several kinds in one name make "several": poultry of several kinds, meats without poultry, or any.
"""

import re
from pathlib import Path

KINDS = ["unknown", "none", "beef", "veal", "bison", "pork", "lamb", "goat", "game", "chicken",
         "turkey", "other_poultry", "fish", "mixed_meat", "mixed"]
POULTRY = {"chicken", "turkey", "other_poultry"}
MEAT = {"beef", "veal", "bison", "pork", "lamb", "goat", "game", "mixed_meat"}


def join(kinds):
    if len(kinds) == 1:
        return next(iter(kinds))
    if kinds <= POULTRY:
        return "other_poultry"
    return "mixed_meat" if kinds <= MEAT else "mixed"


class Species:
    def __init__(self, rules_path):
        self.rules, self.rows = [], {}
        for number, line in enumerate(Path(rules_path).read_text(encoding="utf-8").splitlines()):
            if number == 0:
                continue
            scope, words, species, _note = line.split("\t")
            kind = species.rpartition("-")[2]
            if kind not in [*KINDS, "drop", "unstated"]:
                raise SystemExit(f"{rules_path}: no such kind: {species}")
            if re.fullmatch(r"\d{5}", scope):
                self.rows[scope] = kind
            else:
                groups = None if scope == "all" else set(scope.split(","))
                self.rules.append((groups, re.compile(words) if words else None, species))

    def of(self, ndb_no, name):
        if ndb_no in self.rows:
            return self.rows[ndb_no]
        name, found, unstated, default = name.lower(), set(), False, "none"
        for groups, words, species in self.rules:
            if groups is not None and ndb_no[:2] not in groups:
                continue
            if words is not None and not words.search(name):
                continue
            if species.startswith("default-"):
                default = species.removeprefix("default-")
            elif species == "drop":
                name = words.sub(" ", name)
            elif species.startswith("stop-"):
                return species.removeprefix("stop-")
            elif species == "unstated":
                unstated = True
            else:
                found.add(species)
        if found:
            return join(found)
        return "mixed" if unstated else default

# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Readable names for the dataset's abbreviated descriptions, by data/sr28/abbreviations.tsv."""

import re

SCOPES = {
    "beef": {"13", "23"},
    "pork": {"10"},
    "lamb": {"17"},
    "poultry": {"05"},
    "sausage": {"07"},
}
SCOPES["meat"] = set().union(*SCOPES.values())
NOT_IN_WORD = r"(?<![A-Z0-9'])(?:{})(?![A-Z0-9'])"
# Finished text is put aside behind a private-use character, so that no later rule touches it.
MARK = chr(0xE000)


class Expander:
    """Applies the regular expressions in file order, then the longest token, narrow scope first."""

    def __init__(self, abbreviations_path):
        self.rules = []
        lines = abbreviations_path.read_text(encoding="utf-8").splitlines()
        for line in lines[1:]:
            scope, token, expansion, _note = line.split("\t")
            self.rules.append((scope, token, expansion))
        self.by_group = {}

    def _for_group(self, group):
        if group not in self.by_group:
            self.by_group[group] = self._compile(group)
        return self.by_group[group]

    def _compile(self, group):
        patterns, tokens = [], {}
        for scope, token, expansion in self.rules:
            if scope != "all" and group not in SCOPES[scope]:
                continue
            if token.startswith("/"):
                patterns.append((re.compile(token[1:-1]), expansion))
            else:
                tokens.setdefault(token, expansion)
        longest_first = sorted(tokens, key=len, reverse=True)
        union = re.compile(NOT_IN_WORD.format("|".join(map(re.escape, longest_first))))
        return patterns, tokens, union

    def readable(self, ndb_no, description):
        patterns, tokens, union = self._for_group(ndb_no[:2])
        done = []

        def put_aside(text):
            done.append(text)
            return MARK + chr(0xE001 + len(done))

        name = re.sub(r"\s*,\s*", ", ", description.upper().strip())
        name = re.sub(r"\s{2,}", ", ", name)
        for pattern, expansion in patterns:
            name = pattern.sub(lambda m, e=expansion: put_aside(m.expand(e)), name)
        name = union.sub(lambda m: put_aside(tokens[m.group()]), name).lower()
        name = re.sub(MARK + "(.)", lambda m: done[ord(m.group(1)) - 0xE002], name)
        name = re.sub(r"\s+", " ", name).strip(" ,")
        name = re.sub(r"(?<!,) (trimmed to \d)", r", \1", name)
        return name[:1].upper() + name[1:]

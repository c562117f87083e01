/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-names-private.h - names of foods inside the store layer */
#pragma once

#include "store/fm-names.h"
#include "store/notebook/fm-db.h"

G_BEGIN_DECLS

/** A stored formula with the notebook's names. Returns: (transfer full); NULL on error. */
FmFormula *fm_names_read_formula (FmDb *db, const char *json, GError **error);
/** Keeps the names that are not those of the rule, and forgets the others. */
gboolean fm_names_remember (FmDb *db, const FmFormula *formula, GError **error);

G_END_DECLS

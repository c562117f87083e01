/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-json.h - the text form of a formula, and of one ingredient
 *
 * Internal to the store layer; fm_formula_to_json() and fm_formula_from_json() are in
 * fm-versions.h. A key that is absent means unknown. Keys come in a fixed order and numbers are
 * written with as many digits as it takes to read the same double back, so that equal formulas
 * have equal texts.
 */
#pragma once

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

/* The format of the text; a reader refuses newer ones. */
#define FM_FORMULA_JSON_FORMAT 1
#define FM_FORMULA_MAX_LINES 1000

/* Names in the text, in the order of the enums; never translated, never renamed. */
extern const char *const fm_json_ingredient_kinds[FM_INGREDIENT_OTHER + 1];
extern const char *const fm_json_provenances[FM_PROVENANCE_NONE + 1];

/** A finite number with as many digits as it takes. */
void fm_json_append_double (GString *out, double value);
/** The inside of a string. @valid: UTF-8. */
void fm_json_append_escaped (GString *out, const char *valid);

char *fm_ingredient_to_json (const FmIngredient *ingredient);
FmIngredient *fm_ingredient_from_json (const char *json, GError **error);

G_END_DECLS

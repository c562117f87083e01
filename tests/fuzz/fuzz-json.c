/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* The stored text of a formula and of an ingredient, whatever lies in the notebook. */
#include "fuzz.h"
#include "store/fm-formula-json.h"
#include "store/fm-versions.h"

int
LLVMFuzzerTestOneInput (const guint8 *bytes, gsize size)
{
  g_autofree char *text = fuzz_text (bytes, size);
  g_autoptr (GError) formula_error = NULL;
  g_autoptr (GError) ingredient_error = NULL;
  g_autoptr (FmFormula) formula = fm_formula_from_json (text, &formula_error);
  g_autoptr (FmIngredient) ingredient = fm_ingredient_from_json (text, &ingredient_error);

  fuzz_check_error (formula != NULL, formula_error);
  fuzz_check_error (ingredient != NULL, ingredient_error);
  /* What was read is written and read again. */
  if (formula != NULL) {
    g_autofree char *again = fm_formula_to_json (formula);
    g_autoptr (FmFormula) same = fm_formula_from_json (again, NULL);

    if (same == NULL)
      g_error ("A formula that was read cannot be read again.");
  }
  return 0;
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-json.c - writing a formula as text
 *
 * Written by hand because json-glib 1.6 prints 1e-10 as "1e-10.0", which no reader accepts.
 */
#include "store/fm-formula-json.h"

#include <math.h>

#include "store/fm-versions.h"

const char *const fm_json_ingredient_kinds[FM_INGREDIENT_OTHER + 1] = {
  "cut", "trim", "fat", "cured", "salt", "spice", "water", "binder", "other",
};
const char *const fm_json_provenances[FM_PROVENANCE_NONE + 1] = {
  "dataset",
  "declared",
  "analysis",
  "none",
};

/* Begins a member: a comma unless it is the first one of its object. */
static void
add_key (GString *out, const char *key)
{
  if (out->str[out->len - 1] != '{')
    g_string_append_c (out, ',');
  g_string_append_printf (out, "\"%s\":", key);
}

void
fm_json_append_double (GString *out, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (text, sizeof text, "%.15g", value);
  if (g_ascii_strtod (text, NULL) != value)
    g_ascii_dtostr (text, sizeof text, value);
  g_string_append (out, text);
}

static void
add_double (GString *out, const char *key, double value)
{
  if (!isfinite (value))
    return;
  add_key (out, key);
  fm_json_append_double (out, value);
}

void
fm_json_append_escaped (GString *out, const char *valid)
{
  for (const char *p = valid; *p != '\0'; p++) {
    guchar c = (guchar)*p;

    if (c == '"' || c == '\\')
      g_string_append_printf (out, "\\%c", c);
    else if (c < 0x20 || c == 0x7f)
      g_string_append_printf (out, "\\u%04x", c);
    else
      g_string_append_c (out, *p);
  }
}

static void
add_string (GString *out, const char *key, const char *value)
{
  g_autofree char *valid = value != NULL ? g_utf8_make_valid (value, -1) : NULL;

  if (valid == NULL)
    return;
  add_key (out, key);
  g_string_append_c (out, '"');
  fm_json_append_escaped (out, valid);
  g_string_append_c (out, '"');
}

/* Left out while nobody stated them; an empty list is the statement that there are none. */
static void
add_allergens (GString *out, const FmIngredient *ingredient)
{
  const char *comma = "";

  if (!ingredient->allergens_known)
    return;
  add_key (out, "allergens");
  g_string_append_c (out, '[');
  for (int i = 0; i < FM_N_ALLERGENS; i++) {
    if ((ingredient->allergens & FM_ALLERGEN_BIT (i)) == 0)
      continue;
    g_string_append_printf (out, "%s\"%s\"", comma, fm_allergen_key ((FmAllergen)i));
    comma = ",";
  }
  g_string_append_c (out, ']');
}

/* Older programs know no spice, water or binder: for them these are "other". */
static void
add_kind (GString *out, FmIngredientKind kind)
{
  gboolean newer = kind > FM_INGREDIENT_SALT;
  add_string (out, "kind", fm_json_ingredient_kinds[newer ? FM_INGREDIENT_OTHER : kind]);
  if (newer)
    add_string (out, "use", fm_json_ingredient_kinds[kind]);
}

/* How a dataset row is called belongs to the notebook (fm-names.h), so that a new name changes no
 * version. */
static const char *
stored_name (const FmIngredient *ingredient)
{
  gboolean is_row = ingredient->provenance == FM_PROVENANCE_DATASET;

  return is_row && ingredient->full_name != NULL ? ingredient->full_name : ingredient->name;
}

static void
add_ingredient (GString *out, const FmIngredient *ingredient)
{
  g_string_append_c (out, '{');
  add_string (out, "id", ingredient->id);
  add_string (out, "name", stored_name (ingredient));
  add_kind (out, ingredient->kind);
  add_string (out, "species", fm_species_key (ingredient->species));
  add_string (out, "provenance", fm_json_provenances[ingredient->provenance]);
  add_string (out, "source_ref", ingredient->source_ref);
  add_string (out, "original_name", ingredient->original_name);
  add_double (out, "declared_fat_pct", ingredient->declared_fat_pct);
  add_double (out, "fat_u_g_per_100g", ingredient->fat_u_g_per_100g);
  add_double (out, "collagen_g_per_100g", ingredient->collagen_g_per_100g);
  add_double (out, "price_per_kg", ingredient->price_per_kg);
  add_double (out, "ep_yield_pct", ingredient->ep_yield_pct);
  add_allergens (out, ingredient);
  add_key (out, "per_100g");
  g_string_append_c (out, '{');
  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    add_double (out, fm_nutrient_info ((FmNutrient)i)->key, ingredient->composition.per_100g[i]);
  g_string_append (out, "}}");
}

static void
add_line (GString *out, const FmFormulaLine *line)
{
  g_string_append_c (out, '{');
  add_string (out, "id", line->id);
  add_double (out, "mass_g", line->mass_g);
  if (line->locked) {
    add_key (out, "locked");
    g_string_append (out, "true");
  }
  add_double (out, "min_share_pct", line->min_share_pct);
  add_double (out, "max_share_pct", line->max_share_pct);
  add_string (out, "note", line->note);
  add_key (out, "ingredient");
  add_ingredient (out, line->ingredient);
  g_string_append_c (out, '}');
}

static void
add_bands (GString *out, const FmBrief *brief)
{
  add_key (out, "bands");
  g_string_append_c (out, '{');
  for (int i = 0; i < FM_N_TARGETS; i++) {
    if (isnan (brief->bands[i].min) && isnan (brief->bands[i].max))
      continue;
    add_key (out, fm_target_info ((FmTargetKind)i)->key);
    g_string_append_c (out, '{');
    add_double (out, "min", brief->bands[i].min);
    add_double (out, "max", brief->bands[i].max);
    g_string_append_c (out, '}');
  }
  g_string_append_c (out, '}');
}

static void
add_brief (GString *out, const FmBrief *brief)
{
  add_key (out, "brief");
  g_string_append_c (out, '{');
  add_double (out, "patty_mass_g", brief->patty_mass_g);
  add_double (out, "n_patties", brief->n_patties);
  add_double (out, "surface_salt_pct", brief->surface_salt_pct);
  add_bands (out, brief);
  add_string (out, "rules", fm_rule_set_key (brief->rules));
  add_string (out, "doneness", brief->doneness);
  add_string (out, "notes", brief->notes);
  g_string_append_c (out, '}');
}

static void
add_plates (GString *out, const FmProcess *process)
{
  if (process->plates_mm->len == 0)
    return;
  add_key (out, fm_process_field (FM_PROCESS_PLATES)->key);
  g_string_append_c (out, '[');
  for (guint i = 0; i < process->plates_mm->len; i++) {
    if (i > 0)
      g_string_append_c (out, ',');
    fm_json_append_double (out, g_array_index (process->plates_mm, double, i));
  }
  g_string_append_c (out, ']');
}

static void
add_seasonings (GString *out, const FmProcess *process)
{
  if (process->seasonings->len == 0)
    return;
  add_key (out, fm_process_field (FM_PROCESS_SEASONINGS)->key);
  g_string_append_c (out, '[');
  for (guint i = 0; i < process->seasonings->len; i++) {
    const FmSeasoning *seasoning = fm_process_seasoning (process, i);

    g_string_append (out, i > 0 ? ",{" : "{");
    add_string (out, "what", seasoning->what);
    add_string (out, "moment", fm_season_moment_key (seasoning->moment));
    add_string (out, "where", seasoning->on_surface ? "surface" : "mixed");
    g_string_append_c (out, '}');
  }
  g_string_append_c (out, ']');
}

/* Left out while nothing is planned, so that a formula from before has the same text. */
static void
add_process (GString *out, const FmProcess *process)
{
  if (fm_process_is_empty (process))
    return;
  add_key (out, "process");
  g_string_append_c (out, '{');
  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++) {
    const FmProcessFieldInfo *info = fm_process_field ((FmProcessField)i);

    switch (info->shape) {
    case FM_PROCESS_IS_NUMBER:
      add_double (out, info->key, process->numbers[i]);
      break;
    case FM_PROCESS_IS_WORDS:
      add_string (out, info->key, process->words[i]);
      break;
    case FM_PROCESS_IS_PLATES:
      add_plates (out, process);
      break;
    case FM_PROCESS_IS_SEASONINGS:
      add_seasonings (out, process);
      break;
    }
  }
  g_string_append_c (out, '}');
}

char *
fm_formula_to_json (const FmFormula *formula)
{
  GString *out = g_string_new ("{");

  add_double (out, "format", FM_FORMULA_JSON_FORMAT);
  add_brief (out, formula->brief);
  add_process (out, formula->process);
  add_key (out, "lines");
  g_string_append_c (out, '[');
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    if (i > 0)
      g_string_append_c (out, ',');
    add_line (out, fm_formula_line (formula, i));
  }
  g_string_append (out, "]}");
  return g_string_free (out, FALSE);
}

char *
fm_ingredient_to_json (const FmIngredient *ingredient)
{
  GString *out = g_string_new (NULL);

  add_ingredient (out, ingredient);
  return g_string_free (out, FALSE);
}

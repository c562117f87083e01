/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-json-read.c - reading a formula from text that nobody vouches for */
#include "store/fm-formula-json.h"

#include <float.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/fm-json-read.h"
#include "store/fm-versions.h"

#define MAX_NUMBER 1e9

static void
read_composition (FmJsonReading *self, JsonObject *object, FmComposition *composition)
{
  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    composition->per_100g[i] =
        fm_json_read_double (self, object, fm_nutrient_info ((FmNutrient)i)->key, 0.0, MAX_NUMBER);
}

static FmAllergen
read_allergen (JsonNode *node)
{
  gboolean is_text =
      JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;

  return is_text ? fm_allergen_from_key (json_node_get_string (node)) : FM_N_ALLERGENS;
}

/* An unknown word is an error: to drop it would hide an allergen. */
static void
read_allergens (FmJsonReading *self, JsonObject *object, FmIngredient *ingredient)
{
  JsonNode *node = json_object_get_member (object, "allergens");

  if (node == NULL)
    return;
  if (!JSON_NODE_HOLDS_ARRAY (node)) {
    fm_json_fail (self, "allergens");
    return;
  }
  JsonArray *list = json_node_get_array (node);
  ingredient->allergens_known = TRUE;
  for (guint i = 0; i < json_array_get_length (list); i++) {
    FmAllergen allergen = read_allergen (json_array_get_element (list, i));

    if (allergen == FM_N_ALLERGENS)
      fm_json_fail (self, "allergens");
    else
      ingredient->allergens |= FM_ALLERGEN_BIT (allergen);
  }
}

/* Notebooks from before the animal was noted: what the dataset's number tells. */
static void
read_species (FmJsonReading *self, JsonObject *object, FmIngredient *ingredient)
{
  g_autofree char *key = fm_json_read_string (self, object, "species");

  ingredient->species =
      key != NULL ? fm_species_from_key (key) : fm_ingredient_guess_species (ingredient);
  if (key != NULL && strcmp (key, fm_species_key (ingredient->species)) != 0)
    fm_json_fail (self, "species");
}

/* Older notebooks held spice, water and binders as "other": what the dataset's number tells. A use
 * that only a newer program knows is "other" here. */
static void
read_use (FmJsonReading *self, JsonObject *object, FmIngredient *ingredient)
{
  g_autofree char *use = fm_json_read_string (self, object, "use");
  FmIngredientKind guess = fm_ingredient_guess_kind (ingredient->source_ref, ingredient->name);

  if (ingredient->kind != FM_INGREDIENT_OTHER)
    return;
  for (int i = FM_INGREDIENT_SPICE; use != NULL && i < FM_INGREDIENT_OTHER; i++) {
    if (strcmp (use, fm_json_ingredient_kinds[i]) == 0)
      ingredient->kind = (FmIngredientKind)i;
  }
  if (use == NULL && ingredient->provenance == FM_PROVENANCE_DATASET &&
      fm_ingredient_kind_keeps_share (guess))
    ingredient->kind = guess;
}

static FmIngredient *
read_ingredient (FmJsonReading *self, JsonObject *object)
{
  g_autofree char *name = fm_json_read_string (self, object, "name");
  g_autofree char *id = fm_json_read_string (self, object, "id");
  FmIngredientKind kind = (FmIngredientKind)fm_json_read_name (
      self, object, "kind", fm_json_ingredient_kinds, G_N_ELEMENTS (fm_json_ingredient_kinds));
  FmIngredient *ingredient = fm_ingredient_new (name != NULL ? name : "", kind);
  JsonObject *composition = fm_json_read_object (self, object, "per_100g");

  if (name == NULL || *name == '\0')
    fm_json_fail (self, "name");
  if (id == NULL || *id == '\0') {
    fm_json_fail (self, "id");
  } else {
    g_free (ingredient->id);
    ingredient->id = g_steal_pointer (&id);
  }
  ingredient->provenance = (FmProvenance)fm_json_read_name (
      self, object, "provenance", fm_json_provenances, G_N_ELEMENTS (fm_json_provenances));
  ingredient->source_ref = fm_json_read_string (self, object, "source_ref");
  ingredient->original_name = fm_json_read_string (self, object, "original_name");
  read_use (self, object, ingredient);
  ingredient->declared_fat_pct = fm_json_read_double (self, object, "declared_fat_pct", 0.0, 100.0);
  ingredient->fat_u_g_per_100g = fm_json_read_double (self, object, "fat_u_g_per_100g", 0.0, 100.0);
  ingredient->collagen_g_per_100g =
      fm_json_read_double (self, object, "collagen_g_per_100g", 0.0, 100.0);
  ingredient->price_per_kg = fm_json_read_double (self, object, "price_per_kg", 0.0, MAX_NUMBER);
  ingredient->ep_yield_pct = fm_json_read_double (self, object, "ep_yield_pct", DBL_MIN, 100.0);
  read_species (self, object, ingredient);
  read_allergens (self, object, ingredient);
  if (composition != NULL)
    read_composition (self, composition, &ingredient->composition);
  fm_ingredient_shorten_name (ingredient);
  return ingredient;
}

static gboolean
has_line (const FmFormula *formula, const char *id)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    if (g_strcmp0 (fm_formula_line (formula, i)->id, id) == 0)
      return TRUE;
  }
  return FALSE;
}

static void
read_line (FmJsonReading *self, JsonObject *object, FmFormula *formula)
{
  JsonObject *ingredient_object = fm_json_read_object (self, object, "ingredient");
  g_autoptr (FmIngredient) ingredient = NULL;
  g_autofree char *id = fm_json_read_string (self, object, "id");
  FmFormulaLine *line;
  double mass_g = fm_json_read_needed (self, object, "mass_g", 0.0, FM_MAX_LINE_MASS_G);

  if (ingredient_object == NULL || id == NULL || *id == '\0' || has_line (formula, id)) {
    fm_json_fail (self, "lines");
    return;
  }
  ingredient = read_ingredient (self, ingredient_object);
  line = fm_formula_line (formula, fm_formula_add (formula, ingredient, mass_g));
  g_free (line->id);
  line->id = g_steal_pointer (&id);
  line->locked = fm_json_read_boolean (self, object, "locked");
  line->min_share_pct = fm_json_read_double (self, object, "min_share_pct", 0.0, 100.0);
  line->max_share_pct = fm_json_read_double (self, object, "max_share_pct", 0.0, 100.0);
  line->note = fm_json_read_string (self, object, "note");
}

static void
read_lines (FmJsonReading *self, JsonObject *object, FmFormula *formula)
{
  JsonNode *node = json_object_get_member (object, "lines");
  JsonArray *lines =
      node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (lines == NULL) {
    fm_json_fail (self, "lines");
    return;
  }
  if (json_array_get_length (lines) > FM_FORMULA_MAX_LINES) {
    if (self->error == NULL)
      g_set_error (&self->error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                   ngettext ("A formula may have at most %d line. Merge or remove some.",
                             "A formula may have at most %d lines. Merge or remove some.",
                             FM_FORMULA_MAX_LINES),
                   FM_FORMULA_MAX_LINES);
    return;
  }
  for (guint i = 0; i < json_array_get_length (lines) && self->error == NULL; i++) {
    JsonNode *line = json_array_get_element (lines, i);

    if (JSON_NODE_HOLDS_OBJECT (line))
      read_line (self, json_node_get_object (line), formula);
    else
      fm_json_fail (self, "lines");
  }
}

static void
read_brief (FmJsonReading *self, JsonObject *object, FmBrief *brief)
{
  JsonObject *bands = fm_json_read_object (self, object, "bands");
  g_autofree char *rules = fm_json_read_string (self, object, "rules");

  brief->rules = fm_rule_set_from_key (rules);
  brief->patty_mass_g =
      fm_json_read_needed (self, object, "patty_mass_g", DBL_MIN, FM_MAX_PATTY_MASS_G);
  brief->n_patties = (int)fm_json_read_needed (self, object, "n_patties", 1.0, FM_MAX_N_PATTIES);
  brief->surface_salt_pct =
      fm_json_read_double (self, object, "surface_salt_pct", 0.0, FM_MAX_SURFACE_SALT_PCT);
  for (int i = 0; bands != NULL && i < FM_N_TARGETS; i++) {
    JsonObject *band = fm_json_read_object (self, bands, fm_target_info ((FmTargetKind)i)->key);

    if (band == NULL)
      continue;
    brief->bands[i].min = fm_json_read_double (self, band, "min", 0.0, MAX_NUMBER);
    brief->bands[i].max = fm_json_read_double (self, band, "max", 0.0, MAX_NUMBER);
  }
  g_free (brief->doneness);
  brief->doneness = fm_json_read_string (self, object, "doneness");
  g_free (brief->notes);
  brief->notes = fm_json_read_string (self, object, "notes");
}

static void
read_plates (FmJsonReading *self, JsonNode *node, FmProcess *process)
{
  const FmProcessFieldInfo *info = fm_process_field (FM_PROCESS_PLATES);
  JsonArray *list = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
  double plates_mm[FM_PROCESS_MAX_PASSES];

  if (list == NULL || json_array_get_length (list) > FM_PROCESS_MAX_PASSES) {
    fm_json_fail (self, info->key);
    return;
  }
  for (guint i = 0; i < json_array_get_length (list); i++)
    if (!fm_json_get_number (json_array_get_element (list, i), &plates_mm[i]) ||
        plates_mm[i] < info->min || plates_mm[i] > info->max) {
      fm_json_fail (self, info->key);
      return;
    }
  fm_process_set_plates (process, plates_mm, json_array_get_length (list));
}

static void
read_seasoning (FmJsonReading *self, JsonObject *object, FmProcess *process)
{
  g_autofree char *what = fm_json_read_string (self, object, "what");
  g_autofree char *moment_key = fm_json_read_string (self, object, "moment");
  g_autofree char *where = fm_json_read_string (self, object, "where");
  FmSeasonMoment moment = fm_season_moment_from_key (moment_key);
  gboolean on_surface = g_strcmp0 (where, "surface") == 0;

  if (what == NULL || *what == '\0' || moment == FM_N_SEASON_MOMENTS ||
      (!on_surface && g_strcmp0 (where, "mixed") != 0))
    fm_json_fail (self, "seasonings");
  else
    fm_process_add_seasoning (process, what, moment, on_surface);
}

static void
read_seasonings (FmJsonReading *self, JsonNode *node, FmProcess *process)
{
  JsonArray *list = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (list == NULL || json_array_get_length (list) > FM_PROCESS_MAX_SEASONINGS) {
    fm_json_fail (self, "seasonings");
    return;
  }
  for (guint i = 0; i < json_array_get_length (list); i++) {
    JsonNode *seasoning = json_array_get_element (list, i);

    if (JSON_NODE_HOLDS_OBJECT (seasoning))
      read_seasoning (self, json_node_get_object (seasoning), process);
    else
      fm_json_fail (self, "seasonings");
  }
}

static void
read_words (FmJsonReading *self, JsonObject *object, FmProcess *process, FmProcessField field)
{
  g_autofree char *words = fm_json_read_string (self, object, fm_process_field (field)->key);

  fm_process_set_words (process, field, words);
}

static void
read_process (FmJsonReading *self, JsonObject *object, FmProcess *process)
{
  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++) {
    const FmProcessFieldInfo *info = fm_process_field ((FmProcessField)i);
    JsonNode *node = json_object_get_member (object, info->key);

    switch (info->shape) {
    case FM_PROCESS_IS_NUMBER:
      process->numbers[i] = fm_json_read_double (self, object, info->key, info->min, info->max);
      break;
    case FM_PROCESS_IS_WORDS:
      read_words (self, object, process, (FmProcessField)i);
      break;
    case FM_PROCESS_IS_PLATES:
      if (node != NULL)
        read_plates (self, node, process);
      break;
    case FM_PROCESS_IS_SEASONINGS:
      if (node != NULL)
        read_seasonings (self, node, process);
      break;
    }
  }
}

static void
check_format (FmJsonReading *self, JsonObject *object)
{
  double format = fm_json_read_needed (self, object, "format", 1.0, MAX_NUMBER);

  if (self->error == NULL && format > FM_FORMULA_JSON_FORMAT)
    g_set_error_literal (&self->error, FM_STORE_ERROR, FM_STORE_ERROR_NEWER,
                         _ ("This formula was written by a newer Forcemeat. Update Forcemeat to "
                            "open it."));
}

FmFormula *
fm_formula_from_json (const char *json, GError **error)
{
  g_autoptr (JsonNode) root = fm_json_parse (json, error);
  g_autoptr (FmFormula) formula = fm_formula_new ();
  FmJsonReading reading = { NULL };
  JsonObject *object, *brief, *process;

  if (root == NULL)
    return NULL;
  object = json_node_get_object (root);
  check_format (&reading, object);
  brief = fm_json_read_object (&reading, object, "brief");
  if (brief != NULL)
    read_brief (&reading, brief, formula->brief);
  else
    fm_json_fail (&reading, "brief");
  process = fm_json_read_object (&reading, object, "process");
  if (process != NULL)
    read_process (&reading, process, formula->process);
  read_lines (&reading, object, formula);
  if (reading.error != NULL) {
    g_propagate_error (error, reading.error);
    return NULL;
  }
  return g_steal_pointer (&formula);
}

FmIngredient *
fm_ingredient_from_json (const char *json, GError **error)
{
  g_autoptr (JsonNode) root = fm_json_parse (json, error);
  g_autoptr (FmIngredient) ingredient = NULL;
  FmJsonReading reading = { NULL };

  if (root == NULL)
    return NULL;
  ingredient = read_ingredient (&reading, json_node_get_object (root));
  if (reading.error != NULL) {
    g_propagate_error (error, reading.error);
    return NULL;
  }
  return g_steal_pointer (&ingredient);
}

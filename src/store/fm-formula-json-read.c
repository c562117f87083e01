/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-json-read.c - reading a formula from text that nobody vouches for */
#include "store/fm-formula-json.h"

#include <float.h>
#include <glib/gi18n-lib.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-text-limit.h"
#include "store/fm-versions.h"

#define MAX_JSON_BYTES (16 * 1024 * 1024)
#define MAX_NUMBER 1e9

/* json-glib 1.6 recurses for each level; ours has five. */
#define MAX_DEPTH 32

/* The reader quotes the text, which may be cut within a letter. */
static void
set_damaged (GError **error, const char *what)
{
  g_autofree char *shown = g_utf8_make_valid (what, -1);

  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
               _ ("The stored formula is damaged (%s). It was left as it is; open a backup or a "
                  "saved copy of the notebook."),
               shown);
}

/* Comments and single quotes, which json-glib would take, could hide brackets from this look. */
static gboolean
is_plain (char c)
{
  return g_ascii_isalnum (c) || g_ascii_isspace (c) || strchr ("{}[],:+-.", c) != NULL;
}

/* Brackets inside strings do not count. */
static gboolean
is_plain_and_shallow (const char *json)
{
  gboolean in_string = FALSE;
  int depth = 0;

  for (const char *p = json; *p != '\0'; p++) {
    if (in_string) {
      if (*p == '\\' && p[1] != '\0')
        p++;
      else if (*p == '"')
        in_string = FALSE;
    } else if (*p == '"') {
      in_string = TRUE;
    } else if (*p == '{' || *p == '[') {
      if (++depth > MAX_DEPTH)
        return FALSE;
    } else if (*p == '}' || *p == ']') {
      depth--;
    } else if (!is_plain (*p)) {
      return FALSE;
    }
  }
  return TRUE;
}

static JsonNode *
parse (const char *json, GError **error)
{
  g_autoptr (GError) local_error = NULL;
  JsonNode *node = NULL;

  if (json == NULL || strlen (json) > MAX_JSON_BYTES || !g_utf8_validate (json, -1, NULL) ||
      !is_plain_and_shallow (json)) {
    set_damaged (error, _ ("not the kind of text that Forcemeat writes"));
    return NULL;
  }
  node = json_from_string (json, &local_error);
  if (node == NULL || !JSON_NODE_HOLDS_OBJECT (node)) {
    set_damaged (error, local_error != NULL ? local_error->message : _ ("no object"));
    g_clear_pointer (&node, json_node_unref);
  }
  return node;
}

/* A reader goes on after an error and hands back what it can; the first error is kept. */
typedef struct {
  GError *error;
} Reading;

static void
fail (Reading *self, const char *key)
{
  if (self->error == NULL)
    set_damaged (&self->error, key);
}

/* Whole numbers and fractions are two types in json-glib. */
static gboolean
get_number (JsonNode *node, double *value)
{
  GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  if (type != G_TYPE_INT64 && type != G_TYPE_DOUBLE)
    return FALSE;
  *value = type == G_TYPE_INT64 ? (double)json_node_get_int (node) : json_node_get_double (node);
  return isfinite (*value);
}

/* NaN when absent. */
static double
read_double (Reading *self, JsonObject *object, const char *key, double min, double max)
{
  JsonNode *node = json_object_get_member (object, key);
  double value;

  if (node == NULL)
    return (double)NAN;
  if (!get_number (node, &value) || value < min || value > max) {
    fail (self, key);
    return (double)NAN;
  }
  return value;
}

static double
read_needed (Reading *self, JsonObject *object, const char *key, double min, double max)
{
  double value = read_double (self, object, key, min, max);

  if (isnan (value)) {
    fail (self, key);
    return min;
  }
  return value;
}

/* NULL when absent. */
static char *
read_string (Reading *self, JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING) {
    fail (self, key);
    return NULL;
  }
  if (!fm_text_fits (json_node_get_string (node), strlen (json_node_get_string (node)))) {
    fail (self, key);
    return NULL;
  }
  return json_node_dup_string (node);
}

static gboolean
read_boolean (Reading *self, JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return FALSE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN) {
    fail (self, key);
    return FALSE;
  }
  return json_node_get_boolean (node);
}

static int
read_name (
    Reading *self, JsonObject *object, const char *key, const char *const *names, int n_names)
{
  g_autofree char *name = read_string (self, object, key);

  for (int i = 0; i < n_names; i++) {
    if (g_strcmp0 (name, names[i]) == 0)
      return i;
  }
  fail (self, key);
  return n_names - 1;
}

/* (transfer none); NULL when absent. */
static JsonObject *
read_object (Reading *self, JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node != NULL && JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  if (node != NULL)
    fail (self, key);
  return NULL;
}

static void
read_composition (Reading *self, JsonObject *object, FmComposition *composition)
{
  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    composition->per_100g[i] =
        read_double (self, object, fm_nutrient_info ((FmNutrient)i)->key, 0.0, MAX_NUMBER);
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
read_allergens (Reading *self, JsonObject *object, FmIngredient *ingredient)
{
  JsonNode *node = json_object_get_member (object, "allergens");

  if (node == NULL)
    return;
  if (!JSON_NODE_HOLDS_ARRAY (node)) {
    fail (self, "allergens");
    return;
  }
  JsonArray *list = json_node_get_array (node);
  ingredient->allergens_known = TRUE;
  for (guint i = 0; i < json_array_get_length (list); i++) {
    FmAllergen allergen = read_allergen (json_array_get_element (list, i));

    if (allergen == FM_N_ALLERGENS)
      fail (self, "allergens");
    else
      ingredient->allergens |= FM_ALLERGEN_BIT (allergen);
  }
}

/* Notebooks from before the animal was noted: what the dataset's number tells. */
static void
read_species (Reading *self, JsonObject *object, FmIngredient *ingredient)
{
  g_autofree char *key = read_string (self, object, "species");

  ingredient->species =
      key != NULL ? fm_species_from_key (key) : fm_ingredient_guess_species (ingredient);
  if (key != NULL && strcmp (key, fm_species_key (ingredient->species)) != 0)
    fail (self, "species");
}

/* Older notebooks held spice, water and binders as "other": what the dataset's number tells. A use
 * that only a newer program knows is "other" here. */
static void
read_use (Reading *self, JsonObject *object, FmIngredient *ingredient)
{
  g_autofree char *use = read_string (self, object, "use");
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
read_ingredient (Reading *self, JsonObject *object)
{
  g_autofree char *name = read_string (self, object, "name");
  g_autofree char *id = read_string (self, object, "id");
  FmIngredientKind kind = (FmIngredientKind)read_name (
      self, object, "kind", fm_json_ingredient_kinds, G_N_ELEMENTS (fm_json_ingredient_kinds));
  FmIngredient *ingredient = fm_ingredient_new (name != NULL ? name : "", kind);
  JsonObject *composition = read_object (self, object, "per_100g");

  if (name == NULL || *name == '\0')
    fail (self, "name");
  if (id == NULL || *id == '\0') {
    fail (self, "id");
  } else {
    g_free (ingredient->id);
    ingredient->id = g_steal_pointer (&id);
  }
  ingredient->provenance = (FmProvenance)read_name (self, object, "provenance", fm_json_provenances,
                                                    G_N_ELEMENTS (fm_json_provenances));
  ingredient->source_ref = read_string (self, object, "source_ref");
  ingredient->original_name = read_string (self, object, "original_name");
  read_use (self, object, ingredient);
  ingredient->declared_fat_pct = read_double (self, object, "declared_fat_pct", 0.0, 100.0);
  ingredient->fat_u_g_per_100g = read_double (self, object, "fat_u_g_per_100g", 0.0, 100.0);
  ingredient->collagen_g_per_100g = read_double (self, object, "collagen_g_per_100g", 0.0, 100.0);
  ingredient->price_per_kg = read_double (self, object, "price_per_kg", 0.0, MAX_NUMBER);
  ingredient->ep_yield_pct = read_double (self, object, "ep_yield_pct", DBL_MIN, 100.0);
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
read_line (Reading *self, JsonObject *object, FmFormula *formula)
{
  JsonObject *ingredient_object = read_object (self, object, "ingredient");
  g_autoptr (FmIngredient) ingredient = NULL;
  g_autofree char *id = read_string (self, object, "id");
  FmFormulaLine *line;
  double mass_g = read_needed (self, object, "mass_g", 0.0, FM_MAX_LINE_MASS_G);

  if (ingredient_object == NULL || id == NULL || *id == '\0' || has_line (formula, id)) {
    fail (self, "lines");
    return;
  }
  ingredient = read_ingredient (self, ingredient_object);
  line = fm_formula_line (formula, fm_formula_add (formula, ingredient, mass_g));
  g_free (line->id);
  line->id = g_steal_pointer (&id);
  line->locked = read_boolean (self, object, "locked");
  line->min_share_pct = read_double (self, object, "min_share_pct", 0.0, 100.0);
  line->max_share_pct = read_double (self, object, "max_share_pct", 0.0, 100.0);
  line->note = read_string (self, object, "note");
}

static void
read_lines (Reading *self, JsonObject *object, FmFormula *formula)
{
  JsonNode *node = json_object_get_member (object, "lines");
  JsonArray *lines =
      node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (lines == NULL) {
    fail (self, "lines");
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
      fail (self, "lines");
  }
}

static void
read_brief (Reading *self, JsonObject *object, FmBrief *brief)
{
  JsonObject *bands = read_object (self, object, "bands");
  g_autofree char *rules = read_string (self, object, "rules");

  brief->rules = fm_rule_set_from_key (rules);
  brief->patty_mass_g = read_needed (self, object, "patty_mass_g", DBL_MIN, FM_MAX_PATTY_MASS_G);
  brief->n_patties = (int)read_needed (self, object, "n_patties", 1.0, FM_MAX_N_PATTIES);
  brief->surface_salt_pct =
      read_double (self, object, "surface_salt_pct", 0.0, FM_MAX_SURFACE_SALT_PCT);
  for (int i = 0; bands != NULL && i < FM_N_TARGETS; i++) {
    JsonObject *band = read_object (self, bands, fm_target_info ((FmTargetKind)i)->key);

    if (band == NULL)
      continue;
    brief->bands[i].min = read_double (self, band, "min", 0.0, MAX_NUMBER);
    brief->bands[i].max = read_double (self, band, "max", 0.0, MAX_NUMBER);
  }
  g_free (brief->doneness);
  brief->doneness = read_string (self, object, "doneness");
  g_free (brief->notes);
  brief->notes = read_string (self, object, "notes");
}

static void
read_plates (Reading *self, JsonNode *node, FmProcess *process)
{
  const FmProcessFieldInfo *info = fm_process_field (FM_PROCESS_PLATES);
  JsonArray *list = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
  double plates_mm[FM_PROCESS_MAX_PASSES];

  if (list == NULL || json_array_get_length (list) > FM_PROCESS_MAX_PASSES) {
    fail (self, info->key);
    return;
  }
  for (guint i = 0; i < json_array_get_length (list); i++)
    if (!get_number (json_array_get_element (list, i), &plates_mm[i]) || plates_mm[i] < info->min ||
        plates_mm[i] > info->max) {
      fail (self, info->key);
      return;
    }
  fm_process_set_plates (process, plates_mm, json_array_get_length (list));
}

static void
read_seasoning (Reading *self, JsonObject *object, FmProcess *process)
{
  g_autofree char *what = read_string (self, object, "what");
  g_autofree char *moment_key = read_string (self, object, "moment");
  g_autofree char *where = read_string (self, object, "where");
  FmSeasonMoment moment = fm_season_moment_from_key (moment_key);
  gboolean on_surface = g_strcmp0 (where, "surface") == 0;

  if (what == NULL || *what == '\0' || moment == FM_N_SEASON_MOMENTS ||
      (!on_surface && g_strcmp0 (where, "mixed") != 0))
    fail (self, "seasonings");
  else
    fm_process_add_seasoning (process, what, moment, on_surface);
}

static void
read_seasonings (Reading *self, JsonNode *node, FmProcess *process)
{
  JsonArray *list = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (list == NULL || json_array_get_length (list) > FM_PROCESS_MAX_SEASONINGS) {
    fail (self, "seasonings");
    return;
  }
  for (guint i = 0; i < json_array_get_length (list); i++) {
    JsonNode *seasoning = json_array_get_element (list, i);

    if (JSON_NODE_HOLDS_OBJECT (seasoning))
      read_seasoning (self, json_node_get_object (seasoning), process);
    else
      fail (self, "seasonings");
  }
}

static void
read_words (Reading *self, JsonObject *object, FmProcess *process, FmProcessField field)
{
  g_autofree char *words = read_string (self, object, fm_process_field (field)->key);

  fm_process_set_words (process, field, words);
}

static void
read_process (Reading *self, JsonObject *object, FmProcess *process)
{
  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++) {
    const FmProcessFieldInfo *info = fm_process_field ((FmProcessField)i);
    JsonNode *node = json_object_get_member (object, info->key);

    switch (info->shape) {
    case FM_PROCESS_IS_NUMBER:
      process->numbers[i] = read_double (self, object, info->key, info->min, info->max);
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
check_format (Reading *self, JsonObject *object)
{
  double format = read_needed (self, object, "format", 1.0, MAX_NUMBER);

  if (self->error == NULL && format > FM_FORMULA_JSON_FORMAT)
    g_set_error_literal (&self->error, FM_STORE_ERROR, FM_STORE_ERROR_NEWER,
                         _ ("This formula was written by a newer Forcemeat. Update Forcemeat to "
                            "open it."));
}

FmFormula *
fm_formula_from_json (const char *json, GError **error)
{
  g_autoptr (JsonNode) root = parse (json, error);
  g_autoptr (FmFormula) formula = fm_formula_new ();
  Reading reading = { NULL };
  JsonObject *object, *brief, *process;

  if (root == NULL)
    return NULL;
  object = json_node_get_object (root);
  check_format (&reading, object);
  brief = read_object (&reading, object, "brief");
  if (brief != NULL)
    read_brief (&reading, brief, formula->brief);
  else
    fail (&reading, "brief");
  process = read_object (&reading, object, "process");
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
  g_autoptr (JsonNode) root = parse (json, error);
  g_autoptr (FmIngredient) ingredient = NULL;
  Reading reading = { NULL };

  if (root == NULL)
    return NULL;
  ingredient = read_ingredient (&reading, json_node_get_object (root));
  if (reading.error != NULL) {
    g_propagate_error (error, reading.error);
    return NULL;
  }
  return g_steal_pointer (&ingredient);
}

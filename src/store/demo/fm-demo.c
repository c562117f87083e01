/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/demo/fm-demo.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>

#include "core/formula/fm-analysis.h"
#include "store/demo/fm-demo-data.h"
#include "store/demo/fm-demo-log.h"
#include "store/demo/fm-demo-panel.h"
#include "store/demo/fm-demo-version.h"

/* Marks a notebook as ours to replace. */
#define DEMO_SETTING "demo"
#define LAST_BLEND_SETTING "last-blend"
#define COMPARED_SETTING "compare-selection"
#define N_COMPARED 4

/* What is needed while the story is told. */
typedef struct {
  FmNotebook *notebook;
  GCancellable *cancellable;
  FmIngredient *stock[FM_DEMO_N_FOODS];
  gint64 *blend_ids;
  FmDemoMade *made; /* one per version; formulas owned */
  FmFormula **formulas;
} Demo;

static FmIngredient *
stock_from_dataset (FmFoodStore *foods, const FmDemoStock *stock, GError **error)
{
  g_autoptr (FmFood) food = fm_food_store_get (foods, stock->ndb_no, error);

  if (food == NULL)
    return NULL;
  return fm_ingredient_new_from_food (food);
}

/* Only the lean point is declared: everything else stays unknown. */
static FmIngredient *
new_declared_trim (void)
{
  FmIngredient *trim = fm_ingredient_new (_ ("Beef trim 50/50, bought"), FM_INGREDIENT_TRIM);

  trim->species = FM_SPECIES_BEEF;
  trim->provenance = FM_PROVENANCE_DECLARED;
  trim->source_ref = g_strdup (_ ("Supplier's lean point 50/50"));
  trim->declared_fat_pct = 50.0;
  return trim;
}

static FmIngredient *
new_analysed_trim (void)
{
  FmIngredient *trim = fm_ingredient_new (_ ("Chuck trim, own analysis"), FM_INGREDIENT_TRIM);

  trim->species = FM_SPECIES_BEEF;
  trim->provenance = FM_PROVENANCE_ANALYSIS;
  trim->source_ref = g_strdup (_ ("Laboratory report 7"));
  trim->composition.per_100g[FM_NUTRIENT_WATER] = 62.6;
  trim->composition.per_100g[FM_NUTRIENT_PROTEIN] = 18.1;
  trim->composition.per_100g[FM_NUTRIENT_FAT] = 18.4;
  trim->composition.per_100g[FM_NUTRIENT_ASH] = 0.9;
  trim->fat_u_g_per_100g = 0.6;
  return trim;
}

static gboolean
fill_stock (Demo *demo, FmFoodStore *foods, GError **error)
{
  for (guint i = 0; i < FM_DEMO_N_FOODS; i++) {
    const FmDemoStock *stock = &fm_demo_stock[i];

    if (stock->ndb_no != NULL)
      demo->stock[i] = stock_from_dataset (foods, stock, error);
    else
      demo->stock[i] = i == FM_DEMO_TRIM_50 ? new_declared_trim () : new_analysed_trim ();
    if (demo->stock[i] == NULL)
      return FALSE;
    demo->stock[i]->price_per_kg = stock->price_per_kg;
    demo->stock[i]->allergens_known = TRUE;
    demo->stock[i]->allergens = stock->allergens;
    if (stock->ndb_no == NULL && !fm_ingredients_save (demo->notebook, demo->stock[i], error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
date_blend_in (FmDb *db, gint64 blend_id, gint64 created_at, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "UPDATE blends SET created_at = ?2 WHERE id = ?1", error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, blend_id);
  fm_stmt_bind_int (stmt, 2, created_at);
  return fm_stmt_run (db, stmt, error);
}

static gboolean
add_blends (Demo *demo, GError **error)
{
  guint n_blends;
  const FmDemoBlend *blends = fm_demo_blends (&n_blends);

  demo->blend_ids = g_new0 (gint64, n_blends);
  for (guint i = 0; i < n_blends; i++) {
    demo->blend_ids[i] = fm_blends_add (demo->notebook, _ (blends[i].name), error);
    if (demo->blend_ids[i] == 0)
      return FALSE;
    FmDb *db = fm_notebook_begin (demo->notebook, error);
    if (db == NULL ||
        !fm_notebook_end (
            demo->notebook,
            date_blend_in (db, demo->blend_ids[i], fm_demo_moment (0, 8 + (int)i), error), error))
      return FALSE;
  }
  return TRUE;
}

static void
plan_process (FmProcess *process, const FmDemoProcess *plan)
{
  guint n_passes = 0;

  for (guint i = 0; i < FM_N_PROCESS_FIELDS; i++) {
    if (plan->numbers[i] > 0)
      process->numbers[i] = plan->numbers[i];
    if (plan->words[i] != NULL)
      fm_process_set_words (process, (FmProcessField)i, _ (plan->words[i]));
  }
  while (n_passes < FM_PROCESS_MAX_PASSES && plan->plates_mm[n_passes] > 0)
    n_passes++;
  fm_process_set_plates (process, plan->plates_mm, n_passes);
  for (guint i = 0; i < FM_DEMO_MAX_SEASONINGS; i++) {
    const FmDemoSeasoning *seasoning = &plan->seasonings[i];

    if (seasoning->what != NULL)
      fm_process_add_seasoning (process, _ (seasoning->what), seasoning->moment,
                                seasoning->on_surface);
  }
}

static FmFormula *
new_formula_for (const FmDemoBlend *blend)
{
  FmFormula *formula = fm_formula_new ();

  formula->brief->patty_mass_g = blend->patty_mass_g;
  formula->brief->n_patties = blend->n_patties;
  formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ blend->fat_min_pct, blend->fat_max_pct };
  formula->brief->bands[FM_TARGET_COST] = (FmBand){ NAN, blend->cost_max };
  formula->brief->doneness = g_strdup (_ ("71.1 °C (160 °F) in the core"));
  formula->brief->notes = g_strdup (_ (blend->notes));
  plan_process (formula->process, &blend->process);
  return formula;
}

static gboolean
wanted (const FmDemoVersion *version, const Demo *demo, const FmIngredient *ingredient)
{
  for (guint i = 0; i < FM_DEMO_MAX_LINES && version->lines[i].mass_g > 0; i++)
    if (g_strcmp0 (demo->stock[version->lines[i].food]->id, ingredient->id) == 0)
      return TRUE;
  return FALSE;
}

/* Lines keep their ids from the parent, as they do when a cook edits a draft. */
static gboolean
set_line (FmFormula *formula, FmIngredient *ingredient, double mass_g, GError **error)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++)
    if (g_strcmp0 (fm_formula_line (formula, i)->ingredient->id, ingredient->id) == 0)
      return fm_formula_set_mass (formula, i, mass_g, error);
  fm_formula_add (formula, ingredient, mass_g);
  return TRUE;
}

static gboolean
edit_formula (FmFormula *formula, const FmDemoVersion *version, const Demo *demo, GError **error)
{
  for (guint i = fm_formula_n_lines (formula); i-- > 0;)
    if (!wanted (version, demo, fm_formula_line (formula, i)->ingredient))
      fm_formula_remove (formula, i);
  for (guint i = 0; i < FM_DEMO_MAX_LINES && version->lines[i].mass_g > 0; i++)
    if (!set_line (formula, demo->stock[version->lines[i].food], version->lines[i].mass_g, error))
      return FALSE;
  return TRUE;
}

/* Position of a version in the table. */
static guint
find_version (guint blend, int number)
{
  guint n_versions;
  const FmDemoVersion *versions = fm_demo_versions (&n_versions);

  for (guint i = 0; i < n_versions; i++)
    if (versions[i].blend == blend && versions[i].number == number)
      return i;
  g_assert_not_reached ();
}

static gboolean
insert_version_in (
    FmDb *db, const Demo *demo, const FmDemoVersion *version, FmDemoMade *made, GError **error)
{
  const FmDemoSaved saved = {
    .blend_id = demo->blend_ids[version->blend],
    .parent_id = version->parent == 0
                     ? 0
                     : demo->made[find_version (version->blend, version->parent)].version_id,
    .number = version->number,
    .reason = _ (version->reason),
    .saved_at = fm_demo_moment (version->day, 9),
  };

  return fm_demo_version_insert (db, &saved, made, error);
}

static gboolean
add_version (Demo *demo, guint index, GError **error)
{
  guint n_blends;
  guint n_versions;
  const FmDemoBlend *blends = fm_demo_blends (&n_blends);
  const FmDemoVersion *version = &fm_demo_versions (&n_versions)[index];

  demo->formulas[index] =
      version->parent == 0
          ? new_formula_for (&blends[version->blend])
          : fm_formula_copy (demo->formulas[find_version (version->blend, version->parent)]);
  if (!edit_formula (demo->formulas[index], version, demo, error))
    return FALSE;

  g_autoptr (FmAnalysis) analysis = fm_analysis_new (demo->formulas[index]);
  demo->made[index].formula = demo->formulas[index];
  demo->made[index].fat_pct = analysis->fat_pct;
  FmDb *db = fm_notebook_begin (demo->notebook, error);
  return db != NULL &&
         fm_notebook_end (demo->notebook,
                          insert_version_in (db, demo, version, &demo->made[index], error), error);
}

static gboolean
add_versions (Demo *demo, GError **error)
{
  guint n_versions;
  const FmDemoVersion *versions = fm_demo_versions (&n_versions);

  demo->made = g_new0 (FmDemoMade, n_versions);
  demo->formulas = g_new0 (FmFormula *, n_versions + 1);
  for (guint i = 0; i < n_versions; i++)
    if (!add_version (demo, i, error))
      return FALSE;
  /* Each blend opens on a draft of its newest version. */
  for (guint i = 0; i < n_versions; i++)
    if ((i + 1 == n_versions || versions[i + 1].blend != versions[i].blend) &&
        !fm_draft_branch (demo->notebook, demo->blend_ids[versions[i].blend],
                          demo->made[i].version_id, error))
      return FALSE;
  return TRUE;
}

static gboolean
add_experiments (Demo *demo, GError **error)
{
  guint n_experiments;
  const FmDemoExperiment *experiments = fm_demo_experiments (&n_experiments);

  for (guint i = 0; i < n_experiments; i++) {
    const FmDemoExperiment *making = &experiments[i];
    if (g_cancellable_set_error_if_cancelled (demo->cancellable, error) ||
        !fm_demo_log_add (demo->notebook, making,
                          &demo->made[find_version (making->blend, making->version)], i + 1, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
add_tastings (Demo *demo, GError **error)
{
  return fm_demo_panel_add_map (demo->notebook, demo->blend_ids[FM_DEMO_MAP_BLEND],
                                &demo->made[find_version (FM_DEMO_MAP_BLEND, 1)], error) &&
         fm_demo_panel_add_sealed (demo->notebook, demo->blend_ids[FM_DEMO_SEALED_BLEND], error);
}

static gboolean
remember_where_to_open (Demo *demo, GError **error)
{
  g_autofree char *id = g_strdup_printf ("%" G_GINT64_FORMAT, demo->blend_ids[FM_DEMO_MAP_BLEND]);

  return fm_notebook_set_setting (demo->notebook, LAST_BLEND_SETTING, id, error);
}

/* Of the blend that is opened, as the page of comparisons remembers it. */
static gboolean
remember_what_is_compared (Demo *demo, GError **error)
{
  g_autoptr (GString) keys = g_string_new (NULL);
  g_autoptr (GPtrArray) versions =
      fm_versions_list (demo->notebook, demo->blend_ids[FM_DEMO_MAP_BLEND], error);

  for (guint i = 0; versions != NULL && i < MIN (versions->len, N_COMPARED); i++) {
    const FmVersionInfo *info = g_ptr_array_index (versions, i);

    g_string_append_printf (keys, "%sv%" G_GINT64_FORMAT, i > 0 ? " " : "", info->id);
  }
  return versions != NULL &&
         fm_notebook_set_setting (demo->notebook, COMPARED_SETTING, keys->str, error);
}

static void
clear_demo (Demo *demo)
{
  for (guint i = 0; i < FM_DEMO_N_FOODS; i++)
    g_clear_pointer (&demo->stock[i], fm_ingredient_unref);
  for (guint i = 0; demo->formulas != NULL && demo->formulas[i] != NULL; i++)
    fm_formula_free (demo->formulas[i]);
  g_free (demo->formulas);
  g_free (demo->made);
  g_free (demo->blend_ids);
}

static gboolean
tell_story (FmNotebook *notebook, FmFoodStore *foods, GCancellable *cancellable, GError **error)
{
  Demo demo = { .notebook = notebook, .cancellable = cancellable };
  gboolean told =
      fm_notebook_set_setting (notebook, DEMO_SETTING, "1", error) &&
      fm_notebook_set_setting (notebook, FM_SETTING_INVENTED, fm_invented_words (), error) &&
      fill_stock (&demo, foods, error) && add_blends (&demo, error) &&
      add_versions (&demo, error) && add_experiments (&demo, error) &&
      add_tastings (&demo, error) && remember_where_to_open (&demo, error) &&
      remember_what_is_compared (&demo, error);

  clear_demo (&demo);
  return told;
}

static void
remove_file (const char *path)
{
  static const char *const suffixes[] = { "", "-wal", "-shm", "-journal" };

  for (guint i = 0; i < G_N_ELEMENTS (suffixes); i++) {
    g_autofree char *file = g_strconcat (path, suffixes[i], NULL);
    g_unlink (file);
  }
}

/* Opening takes the writer's lock, so a demo in another window is not pulled away under it. */
static gboolean
check_replaceable (const char *path, GCancellable *cancellable, GError **error)
{
  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return TRUE;

  g_autoptr (FmNotebook) old = fm_notebook_open (path, cancellable, error);
  if (old == NULL)
    return FALSE;
  g_autofree char *mark = fm_notebook_get_setting (old, DEMO_SETTING);
  if (g_strcmp0 (mark, "1") == 0)
    return TRUE;
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
               _ ("“%s” is not the demo notebook, so it is left alone. Choose another place."),
               path);
  return FALSE;
}

static gboolean
move_file (const char *from, const char *to, GError **error)
{
  if (g_rename (from, to) == 0)
    return TRUE;
  g_set_error (error, FM_STORE_ERROR,
               errno == EACCES ? FM_STORE_ERROR_NO_PERMISSION : FM_STORE_ERROR_FAILED,
               _ ("The demo notebook cannot be put at “%s”: %s"), to, g_strerror (errno));
  return FALSE;
}

/* The demo that is there may hold a visitor's own trials: one older copy is kept. */
static gboolean
put_in_place (const char *made, const char *path, char **notice, GError **error)
{
  g_autofree char *before = g_strconcat (path, ".before", NULL);

  if (g_file_test (path, G_FILE_TEST_EXISTS) && !move_file (path, before, error))
    return FALSE;
  return fm_notebook_clear_name (path, notice, error) && move_file (made, path, error);
}

FmNotebook *
fm_demo_create (const char *path, FmFoodStore *foods, GCancellable *cancellable, GError **error)
{
  g_autofree char *directory = g_path_get_dirname (path);
  g_autofree char *made = g_strconcat (path, ".new", NULL);
  g_autofree char *notice = NULL;

  if (!check_replaceable (path, cancellable, error))
    return NULL;
  g_mkdir_with_parents (directory, 0700);
  remove_file (made);
  FmNotebook *notebook = fm_notebook_create (made, error);
  if (notebook == NULL)
    return NULL;
  gboolean told = tell_story (notebook, foods, cancellable, error);
  fm_notebook_unref (notebook);
  if (!told || !put_in_place (made, path, &notice, error)) {
    remove_file (made);
    return NULL;
  }
  notebook = fm_notebook_open (path, cancellable, error);
  if (notebook != NULL && notice != NULL)
    fm_notebook_set_notice (notebook, notice);
  return notebook;
}

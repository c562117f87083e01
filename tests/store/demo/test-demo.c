/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "log-fixture.h"
#include "store/demo/fm-demo.h"
#include "store/fm-maps.h"
#include "store/fm-tastings.h"

typedef struct {
  char *folder;
  char *path;
  FmFoodStore *foods;
} Demo;

static void
set_up (Demo *demo, gconstpointer data)
{
  g_autofree char *foods_path = fm_food_store_default_path ();
  g_autoptr (GError) error = NULL;

  demo->folder = g_dir_make_tmp ("forcemeat-XXXXXX", NULL);
  demo->path = g_build_filename (demo->folder, "demo.forcemeat", NULL);
  demo->foods = fm_food_store_open (foods_path, &error);
  g_assert_no_error (error);
}

static void
tear_down (Demo *demo, gconstpointer data)
{
  fm_food_store_unref (demo->foods);
  fixture_remove_folder (demo->folder);
  g_free (demo->path);
  g_free (demo->folder);
}

static FmNotebook *
create (Demo *demo)
{
  g_autoptr (GError) error = NULL;
  FmNotebook *notebook = fm_demo_create (demo->path, demo->foods, NULL, &error);

  g_assert_no_error (error);
  return notebook;
}

/* The notebook says it once, so that nothing in it has to. */
static void
assert_says_nothing_of_invention (const char *text)
{
  g_autofree char *lower = g_utf8_strdown (text, -1);

  g_assert_null (strstr (lower, "invent"));
}

/* A visitor meets no blank that a cook would have filled: allergens are stated, a process planned.
 */
static void
check_is_complete (const FmFormula *formula)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++)
    g_assert_true (fm_formula_line (formula, i)->ingredient->allergens_known);
  g_assert_false (fm_process_is_empty (formula->process));
  g_assert_cmpuint (formula->process->plates_mm->len, ==, 2);
  g_assert_cmpuint (formula->process->seasonings->len, >, 0);
  g_assert_cmpfloat (formula->process->numbers[FM_PROCESS_TARGET_CORE], ==, 71.1);
}

static void
check_version_tree (FmNotebook *notebook, const FmBlendInfo *blend, guint *n_branchings)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend->id, NULL);
  g_autoptr (GHashTable) parents = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < versions->len; i++) {
    const FmVersionInfo *version = versions->pdata[i];
    g_assert_cmpint (version->number, ==, (int)i + 1);
    g_assert_true ((version->parent_id == 0) == (i == 0));
    g_assert_true (version->fat_pct > 5 && version->fat_pct < 25);
    assert_says_nothing_of_invention (version->reason);
    if (!g_hash_table_add (parents, GSIZE_TO_POINTER ((gsize)version->parent_id)))
      (*n_branchings)++;
    g_autoptr (FmFormula) formula = fm_versions_load (notebook, version->id, NULL);
    g_assert_cmpuint (fm_formula_n_lines (formula), ==, version->n_lines);
    assert_says_nothing_of_invention (formula->brief->notes);
    check_is_complete (formula);
  }
}

static void
check_says_that_it_is_invented (Demo *demo, FmNotebook *notebook)
{
  g_autofree char *path = g_build_filename (demo->folder, "copy.forcemeat", NULL);
  g_autofree char *own_path = g_build_filename (demo->folder, "own.forcemeat", NULL);
  g_autoptr (FmNotebook) own = fm_notebook_create (own_path, NULL);
  g_autoptr (FmNotebook) copy = NULL;

  g_assert_cmpstr (fm_notebook_invented (notebook), ==, fm_invented_words ());
  g_assert_true (fm_notebook_save_copy (notebook, path, NULL, NULL));
  copy = fm_notebook_open (path, NULL, NULL);
  g_assert_cmpstr (fm_notebook_invented (copy), ==, fm_invented_words ());
  g_assert_null (fm_notebook_invented (own));
}

/* Each page of the window has something to show of the blend that it opens on. */
static void
check_opens_where_there_is_something (FmNotebook *notebook)
{
  g_autofree char *setting = fm_notebook_get_setting (notebook, "last-blend");
  const gint64 blend_id = g_ascii_strtoll (setting, NULL, 10);
  g_autofree char *compared = fm_notebook_get_setting (notebook, "compare-selection");
  g_auto (GStrv) keys = g_strsplit (compared, " ", -1);
  const FmExperimentFilter filter = { .blend_id = blend_id };
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend_id, NULL);
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, &filter, NULL, NULL);
  g_autoptr (GPtrArray) tastings = fm_tastings_list (notebook, blend_id, NULL);
  g_autoptr (GPtrArray) maps = fm_maps_list (notebook, blend_id, 0, NULL);

  g_assert_cmpuint (versions->len, >=, 2);
  g_assert_cmpuint (experiments->len, >=, 2);
  g_assert_cmpuint (tastings->len, >=, 1);
  g_assert_cmpuint (maps->len, ==, 1);
  g_assert_cmpuint (g_strv_length (keys), ==, 4);
  for (guint i = 0; keys[i] != NULL; i++) {
    g_autoptr (FmVersionInfo) info =
        fm_versions_info (notebook, g_ascii_strtoll (keys[i] + 1, NULL, 10), NULL);

    g_assert_cmpint (info->blend_id, ==, blend_id);
  }
}

static void
test_counts (Demo *demo, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create (demo);
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, NULL, NULL, NULL);
  g_autoptr (GPtrArray) own = fm_ingredients_list (notebook, NULL, NULL);
  guint n_versions = 0;
  guint n_branchings = 0;
  guint n_photos = 0;

  g_assert_cmpuint (blends->len, >=, 3);
  for (guint i = 0; i < blends->len; i++) {
    const FmBlendInfo *blend = blends->pdata[i];
    assert_says_nothing_of_invention (blend->name);
    g_assert_false (blend->has_draft_changes);
    n_versions += blend->n_versions;
    check_version_tree (notebook, blend, &n_branchings);
  }
  g_assert_cmpuint (n_versions, >=, 12);
  g_assert_cmpuint (n_branchings, >=, 3);
  g_assert_cmpuint (own->len, ==, 2);
  g_assert_cmpuint (experiments->len, >=, 15);
  for (guint i = 0; i < experiments->len; i++) {
    const FmExperimentInfo *info = experiments->pdata[i];
    g_autoptr (FmExperiment) experiment = fm_experiments_load (notebook, info->id, NULL);
    g_assert_true (fm_experiment_check (experiment, NULL));
    assert_says_nothing_of_invention (experiment->notes);
    g_assert_true (isnan (info->cook_loss_pct) ||
                   (info->cook_loss_pct > 15 && info->cook_loss_pct < 35));
    n_photos += info->n_photos;
  }
  g_assert_cmpuint (n_photos, >=, 15);
  check_says_that_it_is_invented (demo, notebook);
  check_opens_where_there_is_something (notebook);
}

static void
test_an_experiment_follows_its_version (Demo *demo, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create (demo);
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, NULL, NULL, NULL);

  for (guint i = 0; i < experiments->len; i++) {
    const FmExperimentInfo *info = experiments->pdata[i];
    g_autoptr (FmVersionInfo) version = fm_versions_info (notebook, info->version_id, NULL);
    g_assert_cmpint (info->made_at, >, version->saved_at);
  }
}

static void
test_has_a_photo_held_upright (Demo *demo, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create (demo);
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, NULL, NULL, NULL);
  guint n_upright = 0;

  for (guint i = 0; i < experiments->len; i++) {
    const FmExperimentInfo *info = experiments->pdata[i];
    g_autoptr (GPtrArray) photos = fm_photos_list (notebook, info->id, NULL);
    for (guint j = 0; j < photos->len; j++) {
      const FmPhotoInfo *photo = photos->pdata[j];
      g_assert_nonnull (strstr (photo->caption, "painted"));
      if (photo->orientation == 6 && photo->height_px > photo->width_px)
        n_upright++;
    }
  }
  g_assert_cmpuint (n_upright, >=, 1);
}

/* All that a cook sees, in one text: masses, temperatures, checksums of pictures. */
static char *
describe (FmNotebook *notebook)
{
  const FmExperimentFilter by_date = { .sort = FM_EXPERIMENT_SORT_DATE };
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, &by_date, NULL, NULL);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < experiments->len; i++) {
    const FmExperimentInfo *info = experiments->pdata[i];
    g_autoptr (GPtrArray) photos = fm_photos_list (notebook, info->id, NULL);
    g_string_append_printf (text, "%s %" G_GINT64_FORMAT " %.9g %.9g %.9g\n", info->title,
                            info->made_at, info->fat_pct, info->mean_raw_g, info->cook_loss_pct);
    for (guint j = 0; j < photos->len; j++)
      g_string_append_printf (text, "  %s\n", ((FmPhotoInfo *)photos->pdata[j])->sha256);
  }
  return g_string_free (text, FALSE);
}

static void
test_same_each_time_and_replaced (Demo *demo, gconstpointer data)
{
  FmNotebook *notebook = create (demo);
  g_autofree char *first = describe (notebook);
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_demo_create (demo->path, demo->foods, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
  g_assert_cmpint (fm_blends_add (notebook, "A trial of my own", NULL), >, 0);
  fm_notebook_unref (notebook);

  notebook = create (demo);
  g_autofree char *second = describe (notebook);
  g_assert_cmpstr (first, ==, second);
  fm_notebook_unref (notebook);
  g_autofree char *before = g_strconcat (demo->path, ".before", NULL);
  g_autoptr (FmNotebook) old = fm_notebook_open (before, NULL, NULL);
  g_autoptr (GPtrArray) blends = fm_blends_list (old, NULL);
  g_assert_cmpuint (blends->len, ==, 5);
}

static void
test_leaves_other_notebooks_alone (Demo *demo, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fm_notebook_unref (fm_notebook_create (demo->path, NULL));
  g_assert_null (fm_demo_create (demo->path, demo->foods, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
}

/* What a demo that was deleted while it was open has left. */
static void
test_stale_log (Demo *demo, gconstpointer data)
{
  g_autofree char *wal = g_strconcat (demo->path, "-wal", NULL);
  g_autoptr (FmNotebook) notebook = NULL;

  g_assert_true (g_file_set_contents (wal, "left", -1, NULL));
  notebook = create (demo);
  g_assert_nonnull (strstr (fm_notebook_get_notice (notebook), "-wal.put-aside"));
}

static void
test_cancelled_leaves_nothing (Demo *demo, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (fm_demo_create (demo->path, demo->foods, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_false (g_file_test (demo->path, G_FILE_TEST_EXISTS));
}

#define ADD(name, func) g_test_add ("/demo/" name, Demo, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("stale-log", test_stale_log);
  ADD ("counts", test_counts);
  ADD ("an-experiment-follows-its-version", test_an_experiment_follows_its_version);
  ADD ("has-a-photo-held-upright", test_has_a_photo_held_upright);
  ADD ("same-each-time-and-replaced", test_same_each_time_and_replaced);
  ADD ("leaves-other-notebooks-alone", test_leaves_other_notebooks_alone);
  ADD ("cancelled-leaves-nothing", test_cancelled_leaves_nothing);
  return g_test_run ();
}

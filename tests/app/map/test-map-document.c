/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-map-document.c - a map being edited: what follows from it, its versions and its data */
#include <glib/gstdio.h>
#include <math.h>

#include "app/map/fm-map-document.h"
#include "core/mixture/fm-map-choice.h"

typedef struct {
  char *folder;
  FmSession *session;
  gint64 blend_id;
  gint64 base_id;
} Fixture;

static void
add_line (FmFormula *formula, const char *name, double fat_g_per_100g, double mass_g)
{
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);

  ingredient->declared_fat_pct = fat_g_per_100g;
  fm_formula_add (formula, ingredient, mass_g);
}

/* A base of three cuts and salt, with a band of fat; salt has no fat value. */
static FmFormula *
new_base (void)
{
  FmFormula *base = fm_formula_new ();

  add_line (base, "Chuck", 16, 500);
  add_line (base, "Shank", 6, 300);
  add_line (base, "Suet", 90, 180);
  add_line (base, "Salt", 0, 20);
  base->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ 18, 30 };
  return base;
}

/* Nothing may fail unseen. */
static void
failure_cb (FmSession *session, const char *text)
{
  g_error ("%s", text);
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = NULL;
  g_autoptr (FmFormula) base = new_base ();
  FmNotebook *notebook;

  fixture->folder = g_dir_make_tmp ("forcemeat-map-XXXXXX", NULL);
  path = g_build_filename (fixture->folder, "test.forcemeat", NULL);
  notebook = fm_notebook_create (path, NULL);
  g_assert_nonnull (notebook);
  fixture->blend_id = fm_blends_add (notebook, "House", NULL);
  fixture->base_id = fm_versions_save (notebook, fixture->blend_id, base, "base", NULL);
  fixture->session = fm_session_new ();
  g_signal_connect (fixture->session, "failure", G_CALLBACK (failure_cb), NULL);
  fm_session_set_notebook (fixture->session, notebook);
  fm_session_show_blend (fixture->session, fixture->blend_id);
  fm_session_flush (fixture->session);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GDir) folder = g_dir_open (fixture->folder, 0, NULL);
  const char *name;

  fm_session_set_notebook (fixture->session, NULL);
  g_object_unref (fixture->session);
  while ((name = g_dir_read_name (folder)) != NULL) {
    g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

    g_remove (path);
  }
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
}

/* A stored map whose first three ingredients change alone. */
static FmMapDocument *
new_document (Fixture *fixture)
{
  FmNotebook *notebook = fm_session_get_notebook (fixture->session);
  FmFormula *base = fm_versions_load (notebook, fixture->base_id, NULL);
  FmMap *map = fm_map_new ();
  g_autoptr (GPtrArray) ingredients = fm_map_ingredients_new (base, map->components);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < 3; i++)
    ((FmMapIngredient *)g_ptr_array_index (ingredients, i))->role = FM_MAP_ALONE;
  fm_map_ingredients_apply (ingredients, map);
  map->blend_id = fixture->blend_id;
  map->base_version_id = fixture->base_id;
  map->name = g_strdup ("Fat and chew");
  fm_maps_save (notebook, map, &error);
  g_assert_no_error (error);
  return fm_map_document_open (fixture->session, map, base);
}

static void
test_region_follows (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmMapDocument) document = new_document (fixture);
  FmMap *map = fm_map_document_get_map (document);
  const FmMapLimit *limit = g_ptr_array_index (fm_map_document_get_limits (document), 0);
  double fat_pct, cost_per_kg;
  const double x[] = { 0.5, 0.3, 0.2 };

  g_assert_true (fm_map_document_has_region (document));
  g_assert_true (limit->is_used);
  /* 98 % of the blend is the mixture: 0.98 x (0.5 x 16 + 0.3 x 6 + 0.2 x 90). */
  fm_map_document_predict (document, x, &fat_pct, &cost_per_kg);
  g_assert_cmpfloat (fabs (fat_pct - 27.244), <, 1e-9);
  g_assert_true (isnan (cost_per_kg));

  /* So little suet that the brief leaves no blend. */
  map->lower[2] = 0.0;
  map->upper[2] = 0.01;
  map->upper[0] = map->upper[1] = 1.0;
  fm_map_document_touch (document);
  g_assert_false (fm_map_document_has_region (document));
  g_assert_nonnull (strstr (fm_map_document_get_problem (document), "brief"));
  fm_session_flush (fixture->session);
}

static gboolean
wait_over_cb (gpointer data)
{
  *(gboolean *)data = TRUE;
  return G_SOURCE_REMOVE;
}

static void
wait_for_data (FmMapDocument *document, guint n_places)
{
  gboolean over = FALSE;
  const guint deadline = g_timeout_add_seconds (20, wait_over_cb, &over);

  while (!over &&
         (fm_map_document_is_making (document) || fm_map_document_get_data (document) == NULL ||
          fm_map_document_get_data (document)->places->len != n_places))
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (over);
  g_source_remove (deadline);
}

static void
test_points_become_versions (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmMapDocument) document = new_document (fixture);
  FmMap *map = fm_map_document_get_map (document);
  const FmMapPoint points[] = { { .x = { 0.6, 0.2, 0.2 } }, { .x = { 0.4, 0.4, 0.2 } } };
  const guint indices[] = { 0, 1, 1, 7 };
  const FmMapPlace *place;

  g_array_append_vals (map->points, points, 2);
  fm_map_document_touch (document);
  fm_map_document_make_versions (document, indices, 1);
  wait_for_data (document, 2);
  fm_map_document_make_versions (document, indices, G_N_ELEMENTS (indices));
  wait_for_data (document, 3);
  place = fm_map_data_place (fm_map_document_get_data (document),
                             g_array_index (map->points, FmMapPoint, 1).version_id);
  g_assert_nonnull (place);
  g_assert_cmpint (place->number, ==, 3);
  g_assert_true (place->is_placed);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat (fabs (place->x[i] - points[1].x[i]), <, 1e-6);
  g_assert_true (g_str_has_prefix (place->reason, "Map “Fat and chew”, trial 2: "));
  fm_session_flush (fixture->session);
}

static gint64
add_experiment (FmNotebook *notebook, gint64 version_id, int rating)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  const FmPattyMass patty = { 180.0, 135.0 };

  experiment->version_id = version_id;
  experiment->title = g_strdup ("made");
  experiment->rating = rating;
  g_array_append_val (experiment->patties, patty);
  g_assert_true (fm_experiments_save (notebook, experiment, NULL));
  return experiment->id;
}

/* What was measured is collected where the blend lies; what was not, is no observation. */
static void
test_data_is_collected (Fixture *fixture, gconstpointer data)
{
  FmNotebook *notebook = fm_session_get_notebook (fixture->session);
  g_autoptr (FmMapDocument) document = new_document (fixture);
  g_autoptr (FmFormula) other = fm_formula_new ();
  const FmMapData *found;
  const FmMapPlace *place;
  gint64 other_id;

  add_line (other, "Lamb", 20, 1000);
  other_id = fm_versions_save (notebook, fixture->blend_id, other, "another meat", NULL);
  add_experiment (notebook, fixture->base_id, 7);
  add_experiment (notebook, fixture->base_id, 0);
  add_experiment (notebook, other_id, 9);
  fm_map_document_reload_data (document);
  wait_for_data (document, 2);
  found = fm_map_document_get_data (document);
  g_assert_cmpuint (found->series[FM_MAP_RATING].data->x->n, ==, 1);
  g_assert_cmpfloat (found->series[FM_MAP_RATING].data->y[0], ==, 7.0);
  g_assert_cmpuint (found->series[FM_MAP_COOK_LOSS].data->x->n, ==, 2);
  g_assert_cmpfloat (fabs (found->series[FM_MAP_COOK_LOSS].data->y[0] - 25.0), <, 1e-9);
  g_assert_cmpuint (found->series[FM_MAP_LIKING].data->x->n, ==, 0);
  g_assert_cmpuint (found->series[FM_MAP_REST_MINUTES].data->x->n, ==, 0);
  place = fm_map_data_place (found, other_id);
  g_assert_false (place->is_placed);
  g_assert_nonnull (place->unplaced);
}

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/map-document/region-follows", test_region_follows);
  ADD ("/map-document/points-become-versions", test_points_become_versions);
  ADD ("/map-document/data-is-collected", test_data_is_collected);
  return g_test_run ();
}

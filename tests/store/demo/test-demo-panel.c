/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-demo-panel.c - the demo's invented panel: what the map suggests approaches its true top
 *
 * The panel's taste is a hill whose top is known (fm-demo-panel.h): invented, no published source.
 */
#include <math.h>

#include "core/mixture/fm-mix-standing.h"
#include "log-fixture.h"
#include "store/demo/fm-demo-panel.h"
#include "store/demo/fm-demo.h"
#include "store/fm-maps.h"
#include "store/fm-tastings.h"

#define N_ROUNDS 6

typedef struct {
  char *folder;
  FmNotebook *notebook;
  FmMap *map;
  FmMixBlend *blend;
  FmMixData *data;
  GPtrArray *tasters; /* char*: a taster is the same person in every tasting */
} Panel;

static guint
taster_level (Panel *panel, const char *name)
{
  guint index;

  if (g_ptr_array_find_with_equal_func (panel->tasters, name, g_str_equal, &index))
    return index;
  g_ptr_array_add (panel->tasters, g_strdup (name));
  return panel->tasters->len - 1;
}

static const FmMapPoint *
point_of (Panel *panel, gint64 version_id)
{
  for (guint i = 0; i < panel->map->points->len; i++) {
    const FmMapPoint *point = &g_array_index (panel->map->points, FmMapPoint, i);

    if (point->version_id == version_id)
      return point;
  }
  g_assert_not_reached ();
}

static void
collect (Panel *panel, gint64 blend_id)
{
  g_autoptr (GPtrArray) scores = fm_tastings_scores (panel->notebook, blend_id, NULL);

  g_assert_nonnull (scores);
  g_assert_cmpuint (scores->len, ==, 3 * 4 * 6);
  panel->data = fm_mix_data_new (FM_DEMO_PANEL_CUTS, 2);
  for (guint i = 0; i < scores->len; i++) {
    const FmTastingScore *score = g_ptr_array_index (scores, i);
    const guint level[] = { (guint)score->tasting_id, taster_level (panel, score->taster) };

    fm_mix_data_add (panel->data, point_of (panel, score->version_id)->x, score->liking, level);
  }
}

static void
load_map (Panel *panel)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (panel->notebook, NULL);
  const FmBlendInfo *blend = g_ptr_array_index (blends, FM_DEMO_MAP_BLEND);
  g_autoptr (GPtrArray) maps = fm_maps_list (panel->notebook, blend->id, 0, NULL);
  g_autoptr (FmFormula) base = NULL;

  g_assert_cmpuint (maps->len, ==, 1);
  panel->map =
      fm_maps_load (panel->notebook, ((const FmMapInfo *)g_ptr_array_index (maps, 0))->id, NULL);
  base = fm_versions_load (panel->notebook, panel->map->base_version_id, NULL);
  panel->blend = fm_mix_blend_new (base, panel->map->components, NULL);
  for (guint i = 0; i < FM_DEMO_PANEL_CUTS; i++) {
    panel->blend->region.lower[i] = panel->map->lower[i];
    panel->blend->region.upper[i] = panel->map->upper[i];
  }
  collect (panel, blend->id);
}

static void
set_up (Panel *panel, gconstpointer data)
{
  g_autofree char *foods_path = fm_food_store_default_path ();
  g_autoptr (GError) error = NULL;
  FmFoodStore *foods = fm_food_store_open (foods_path, &error);
  g_autofree char *path = NULL;

  g_assert_no_error (error);
  panel->folder = g_dir_make_tmp ("forcemeat-XXXXXX", NULL);
  path = g_build_filename (panel->folder, "demo.forcemeat", NULL);
  panel->notebook = fm_demo_create (path, foods, NULL, &error);
  g_assert_no_error (error);
  fm_food_store_unref (foods);
  panel->tasters = g_ptr_array_new_with_free_func (g_free);
  load_map (panel);
}

static void
tear_down (Panel *panel, gconstpointer data)
{
  g_ptr_array_unref (panel->tasters);
  fm_mix_data_free (panel->data);
  fm_mix_blend_free (panel->blend);
  fm_map_free (panel->map);
  fm_notebook_unref (panel->notebook);
  fixture_remove_folder (panel->folder);
  g_free (panel->folder);
}

static double
distance_to_top (const double *x)
{
  double sum = 0;

  for (guint i = 0; i < FM_DEMO_PANEL_CUTS; i++)
    sum += (x[i] - fm_demo_panel_top[i]) * (x[i] - fm_demo_panel_top[i]);
  return sqrt (sum);
}

/* The blend that a fit on all data predicts to be best. */
static FmMixSpot
predicted_best (Panel *panel)
{
  const FmMixGoal more = { .kind = FM_MIX_GOAL_HIGH, .low = 1, .high = 9, .weight = 1 };
  g_autoptr (GError) error = NULL;
  g_autoptr (FmMixFit) fit = fm_mix_fit (panel->data, FM_MIX_QUADRATIC, &error);
  FmMixSpot spot;

  g_assert_no_error (error);
  fm_mix_find_best (fit, &panel->blend->region, &more, &spot, NULL, &error);
  g_assert_no_error (error);
  return spot;
}

static void
test_predicted_best_is_liked (Panel *panel, gconstpointer data)
{
  const FmMixSpot best = predicted_best (panel);
  double tasted = 0;

  for (guint i = 0; i < panel->map->points->len; i++)
    tasted =
        MAX (tasted, fm_demo_panel_liking (g_array_index (panel->map->points, FmMapPoint, i).x));
  g_test_message ("best predicted: liking %.2f, best tasted %.2f, top %.2f",
                  fm_demo_panel_liking (best.x), tasted, fm_demo_panel_liking (fm_demo_panel_top));
  g_assert_true (fm_mix_region_contains (&panel->blend->region, best.x, 1e-6));
  g_assert_cmpfloat (fm_demo_panel_liking (best.x), >, tasted - 0.1);
}

/* Whoever opens the demo finds a map that may be believed, by the model that it takes itself. */
static void
test_map_predicts (Panel *panel, gconstpointer data)
{
  const FmMixResponse liking = { .name = "liking", .low_end = 1, .high_end = 9 };
  g_autoptr (GError) error = NULL;
  g_autoptr (FmMixFit) fit = fm_mix_fit_best (panel->data, &error);
  FmMixVerdict verdict;

  g_assert_no_error (error);
  g_assert_true (fm_mix_judge (fit, &panel->blend->region, &liking, &verdict, NULL, &error));
  g_test_message ("order %d, p of lack %.3f, off %.2f against %.2f", fit->order, fit->p_lack,
                  fit->loo_blend_rmse, fit->loo_mean_rmse);
  g_assert_cmpint (verdict.standing, ==, FM_MIX_PREDICTS);
}

/* Six tasters score @x in a tasting of its own beside the best blend known. */
static void
taste (Panel *panel, const double *x, guint session, GRand *random)
{
  for (guint taster = 0; taster < panel->tasters->len; taster++) {
    const guint level[] = { session, taster };
    const double noise = g_rand_double_range (random, -0.8, 0.8);
    const double again = g_rand_double_range (random, -0.8, 0.8);

    fm_mix_data_add (panel->data, x, round (fm_demo_panel_liking (x) + noise), level);
    fm_mix_data_add (
        panel->data, g_array_index (panel->map->points, FmMapPoint, 0).x,
        round (fm_demo_panel_liking (g_array_index (panel->map->points, FmMapPoint, 0).x) + again),
        level);
  }
}

static void
test_suggestions_approach_the_top (Panel *panel, gconstpointer data)
{
  const FmMixGoal more = { .kind = FM_MIX_GOAL_HIGH, .low = 1, .high = 9, .weight = 1 };
  GRand *random = g_rand_new_with_seed (7);
  const double before = distance_to_top (predicted_best (panel).x);
  double after;

  for (guint i = 0; i < N_ROUNDS; i++) {
    g_autoptr (FmMixFit) fit = fm_mix_fit (panel->data, FM_MIX_QUADRATIC, NULL);
    FmMixSpot next;

    g_assert_true (
        fm_mix_find_next (fit, panel->data, &panel->blend->region, &more, &next, NULL, NULL));
    taste (panel, next.x, 1000 + i, random);
  }
  g_rand_free (random);
  after = distance_to_top (predicted_best (panel).x);
  g_test_message ("distance of the predicted best from the true top: %.3f, then %.3f", before,
                  after);
  g_assert_cmpfloat (after, <, 0.08);
  g_assert_true (after < before || before < 0.05);
}

static void
test_one_tasting_is_still_sealed (Panel *panel, gconstpointer data)
{
  g_autoptr (GPtrArray) tastings = fm_tastings_list (panel->notebook, 0, NULL);
  guint n_sealed = 0;

  g_assert_cmpuint (tastings->len, ==, 4);
  for (guint i = 0; i < tastings->len; i++) {
    const FmTastingInfo *info = g_ptr_array_index (tastings, i);

    if (info->state != FM_TASTING_SEALED)
      continue;
    n_sealed++;
    g_assert_cmpuint (info->n_in, ==, 1);
    g_assert_null (info->headline);
  }
  g_assert_cmpuint (n_sealed, ==, 1);
}

#define ADD(name, func) g_test_add ("/demo-panel/" name, Panel, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("predicted-best-is-liked", test_predicted_best_is_liked);
  ADD ("map-predicts", test_map_predicts);
  ADD ("suggestions-approach-the-top", test_suggestions_approach_the_top);
  ADD ("one-tasting-is-still-sealed", test_one_tasting_is_still_sealed);
  return g_test_run ();
}

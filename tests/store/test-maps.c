/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-maps.c - maps of blends in and out of the notebook */
#include "log-fixture.h"

#include <math.h>
#include <string.h>

#include "store/notebook/fm-db.h"
#include "store/fm-maps.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/maps/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

static void
add_component (FmMap *map, const char *name, const char *first, const char *second)
{
  FmMixComponent *component = fm_mix_component_new (name);
  const double halves[] = { 0.25, 0.75 };
  const double whole = 1;

  g_ptr_array_add (component->members, g_strdup (first));
  if (second != NULL) {
    g_ptr_array_add (component->members, g_strdup (second));
    g_array_append_vals (component->ratio, halves, 2);
  } else {
    g_array_append_val (component->ratio, whole);
  }
  g_ptr_array_add (map->components, component);
}

static FmMap *
new_map (const Fixture *fixture)
{
  FmMap *map = fm_map_new ();
  const FmMapPoint points[] = {
    { { 0.2, 0.5, 0.3 }, FM_MIX_POINT_VERTEX, fixture->version_id },
    { { 1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0 }, FM_MIX_POINT_CENTROID, 0 },
  };

  map->blend_id = fixture->blend_id;
  map->base_version_id = fixture->version_id;
  map->name = g_strdup ("Chuck, brisket, fat");
  map->created_at = 1750000000;
  add_component (map, "Chuck", "chuck", NULL);
  add_component (map, "Brisket", "brisket", "short rib");
  add_component (map, "Fat", "fat", NULL);
  map->lower[0] = 0.1;
  map->upper[0] = 0.7;
  map->design = FM_MAP_OPTIMAL;
  map->degree = 3;
  map->order = FM_MIX_SPECIAL_CUBIC;
  map->n_trials = 8;
  map->seed = (G_GUINT64_CONSTANT (1) << 53) - 1;
  g_array_append_vals (map->points, points, G_N_ELEMENTS (points));
  return map;
}

static void
test_round_trip (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmMap) map = new_map (fixture);
  g_autoptr (FmMap) copy = fm_map_copy (map);
  g_autoptr (FmMap) bare = fm_map_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_map_equal (map, copy));
  g_assert_true (fm_maps_save (fixture->notebook, map, &error));
  g_assert_no_error (error);
  g_assert_false (fm_map_equal (map, copy));
  bare->blend_id = fixture->blend_id;
  bare->base_version_id = fixture->version_id;
  bare->name = g_strdup ("");
  g_assert_true (fm_maps_save (fixture->notebook, bare, &error));
  fixture_reopen (fixture);
  g_autoptr (FmMap) loaded = fm_maps_load (fixture->notebook, map->id, &error);
  g_assert_no_error (error);
  g_assert_true (fm_map_equal (map, loaded));
  g_autoptr (FmMap) bare_loaded = fm_maps_load (fixture->notebook, bare->id, &error);
  g_assert_true (fm_map_equal (bare, bare_loaded));
}

static void
test_update_and_list (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmMap) map = new_map (fixture);
  g_autoptr (GError) error = NULL;
  gint64 other = fm_blends_add (fixture->notebook, "Other", NULL);

  g_assert_true (fm_maps_save (fixture->notebook, map, &error));
  g_ptr_array_set_size (map->components, 2);
  g_array_set_size (map->points, 1);
  g_assert_true (fm_maps_save (fixture->notebook, map, &error));
  g_autoptr (FmMap) loaded = fm_maps_load (fixture->notebook, map->id, &error);
  g_assert_true (fm_map_equal (map, loaded));

  g_autoptr (GPtrArray) list = fm_maps_list (fixture->notebook, fixture->blend_id, 0, &error);
  g_assert_cmpuint (list->len, ==, 1);
  const FmMapInfo *info = list->pdata[0];
  g_assert_cmpint (info->id, ==, map->id);
  g_assert_cmpstr (info->name, ==, map->name);
  g_assert_cmpuint (info->n_points, ==, 1);
  g_assert_cmpuint (info->n_versions, ==, 1);
  g_autoptr (GPtrArray) none = fm_maps_list (fixture->notebook, other, 0, &error);
  g_assert_cmpuint (none->len, ==, 0);

  g_assert_true (fm_maps_remove (fixture->notebook, map->id, &error));
  g_assert_false (fm_maps_remove (fixture->notebook, map->id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (fm_maps_load (fixture->notebook, map->id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_false (fm_maps_save (fixture->notebook, map, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
}

static void
assert_refused (Fixture *fixture, FmMap *map, const char *word)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) list = NULL;

  g_assert_false (fm_maps_save (fixture->notebook, map, &error));
  g_assert_nonnull (error);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, word));
  g_assert_cmpint (map->id, ==, 0);
  list = fm_maps_list (fixture->notebook, fixture->blend_id, 0, NULL);
  g_assert_cmpuint (list->len, ==, 0);
  fm_map_free (map);
}

static void
test_hostile_values (Fixture *fixture, gconstpointer data)
{
  gint64 other = fm_blends_add (fixture->notebook, "Other", NULL);
  FmMap *map;

  map = new_map (fixture);
  map->lower[1] = NAN;
  assert_refused (fixture, map, "Brisket");
  map = new_map (fixture);
  map->upper[2] = 1.5;
  assert_refused (fixture, map, "Fat");
  map = new_map (fixture);
  add_component (map, "Chuck again", "chuck", NULL);
  assert_refused (fixture, map, "twice");
  map = new_map (fixture);
  for (guint i = 0; i < 4; i++)
    add_component (map, "More", "more", NULL);
  assert_refused (fixture, map, "up to 6");
  map = new_map (fixture);
  g_array_index (map->points, FmMapPoint, 1).x[2] = INFINITY;
  assert_refused (fixture, map, "outside");
  map = new_map (fixture);
  map->seed = G_MAXUINT64;
  assert_refused (fixture, map, "seed");
  map = new_map (fixture);
  map->base_version_id = 0;
  assert_refused (fixture, map, "Save the version first");
  map = new_map (fixture);
  g_array_index (map->points, FmMapPoint, 1).version_id =
      fixture_add_version (fixture->notebook, other, 15);
  assert_refused (fixture, map, "Make the version again");
}

static void
test_blend_with_map_stays (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmMap) map = new_map (fixture);
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_maps_save (fixture->notebook, map, &error));
  g_assert_false (fm_blends_remove (fixture->notebook, fixture->blend_id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
  g_assert_cmpstr (error->message, ==,
                   "This blend has 1 map, so it cannot be removed. Remove the map first.");
  g_clear_error (&error);
  g_assert_true (fm_maps_remove (fixture->notebook, map->id, &error));
  g_assert_true (fm_blends_remove (fixture->notebook, fixture->blend_id, &error));
}

/* What this program would never write, but a stranger's file may hold. */
static void
test_hostile_file (Fixture *fixture, gconstpointer data)
{
  static const char *const acts[] = {
    "UPDATE map_members SET component = 9 WHERE component = 1",
    "UPDATE map_points SET kind = 77",
    "UPDATE map_points SET x_1 = 1e300",
    "UPDATE map_components SET lower = -5",
    "UPDATE maps SET design = 12",
  };
  g_autoptr (FmMap) map = new_map (fixture);

  g_assert_true (fm_maps_save (fixture->notebook, map, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (acts); i++) {
    g_autoptr (GError) error = NULL;
    FmDb *db = fm_notebook_begin (fixture->notebook, NULL);
    g_autoptr (FmMap) loaded = NULL;

    fm_db_exec (db, "PRAGMA ignore_check_constraints = ON; PRAGMA defer_foreign_keys = ON", NULL);
    g_assert_true (fm_db_exec (db, acts[i], NULL));
    loaded = fm_maps_load (fixture->notebook, map->id, &error);
    g_assert_true (loaded != NULL || error->code == FM_STORE_ERROR_DAMAGED);
    g_assert_true (i == 0 || loaded == NULL);
    fm_db_exec (db, "PRAGMA ignore_check_constraints = OFF", NULL);
    fm_notebook_end (fixture->notebook, FALSE, NULL);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("round-trip", test_round_trip);
  ADD ("update-and-list", test_update_and_list);
  ADD ("hostile-values", test_hostile_values);
  ADD ("blend-with-map-stays", test_blend_with_map_stays);
  ADD ("hostile-file", test_hostile_file);
  return g_test_run ();
}

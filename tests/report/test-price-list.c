/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-price-list.c - the prices of a notebook as a table, out and in */
#include "report/fm-price-list.h"

#include <glib/gstdio.h>
#include <string.h>

#include "blends.h"
#include "store/fm-prices.h"
#include "store/fm-versions.h"

#define NOTED_AT 1800000000

typedef struct {
  char *folder;
  FmNotebook *notebook;
  gint64 version_id;
  FmIngredient *own;
} Fixture;

static void
set_up (Fixture *self, gconstpointer data)
{
  g_autofree char *path = NULL;
  g_autoptr (FmFormula) formula = three_line_blend ();

  self->folder = g_dir_make_tmp ("forcemeat-XXXXXX", NULL);
  path = g_build_filename (self->folder, "test.forcemeat", NULL);
  self->notebook = fm_notebook_create (path, NULL);
  self->own = ingredient_with_fat ("=Own (invented)", 12.0);
  self->own->price_per_kg = 9.5;
  g_assert_true (fm_ingredients_save (self->notebook, self->own, NULL));
  fm_formula_add (formula, self->own, 100.0);
  const gint64 blend_id = fm_blends_add (self->notebook, "Patty", NULL);
  self->version_id = fm_versions_save (self->notebook, blend_id, formula, "start", NULL);
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  GDir *dir;

  fm_ingredient_unref (self->own);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  dir = g_dir_open (self->folder, 0, NULL);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir)) {
    g_autofree char *path = g_build_filename (self->folder, name, NULL);
    g_unlink (path);
  }
  g_dir_close (dir);
  g_rmdir (self->folder);
  g_free (self->folder);
}

static gboolean
read_list (Fixture *self, const char *text, FmPriceListResult *result, GError **error)
{
  return fm_price_list_read (self->notebook, text, strlen (text), NOTED_AT, result, error);
}

/* A list that goes out and in again changes nothing but what nobody had noted. */
static void
test_out_and_in (Fixture *self, gconstpointer data)
{
  const FmCsvStyle style = { ';', ',' };
  g_autoptr (GError) error = NULL;
  g_autofree char *csv = fm_price_list_csv (self->notebook, style, &error);
  FmPriceListResult result;

  g_assert_no_error (error);
  g_assert_nonnull (strstr (csv, "id;ingredient;price_per_kg;noted_on\r\n"));
  g_assert_nonnull (strstr (csv, "\"'=Own (invented)\";9,5000;\"\""));
  read_list (self, csv, &result, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (result.n_changed, ==, 1);
  g_assert_cmpuint (result.n_blank, ==, 3);
  g_assert_true (read_list (self, csv, &result, NULL));
  g_assert_cmpuint (result.n_changed, ==, 0);
  g_assert_cmpuint (result.n_same, ==, 1);
}

static void
test_version_keeps_its_own (Fixture *self, gconstpointer data)
{
  g_autofree char *csv =
      g_strdup_printf ("price_per_kg,id\n11.25,%s\n", fm_ingredient_identity (self->own));
  FmPriceListResult result;

  g_assert_true (read_list (self, csv, &result, NULL));
  g_autoptr (FmFormula) saved = fm_versions_load (self->notebook, self->version_id, NULL);
  g_assert_cmpfloat (fm_formula_line (saved, 3)->ingredient->price_per_kg, ==, 9.5);
  g_autoptr (GHashTable) today = fm_prices_today (self->notebook, NULL);
  const FmPrice *price = g_hash_table_lookup (today, fm_ingredient_identity (self->own));
  g_assert_cmpfloat (price->price_per_kg, ==, 11.25);
  g_assert_cmpint (price->recorded_at, ==, NOTED_AT);
  g_autoptr (GPtrArray) own = fm_ingredients_list (self->notebook, NULL, NULL);
  g_assert_cmpfloat (((const FmIngredient *)own->pdata[0])->price_per_kg, ==, 11.25);
}

/* Each with the line, and nothing is noted. */
static void
test_bad (Fixture *self, gconstpointer data)
{
  const char *id = fm_ingredient_identity (self->own);
  char *texts[] = {
    g_strdup ("name,price\nx,1\n"),
    g_strdup_printf ("id,price_per_kg\n%s,1.5\nnobody,2.5\n", id),
    g_strdup_printf ("id,price_per_kg\n%s,1.5\n%s,2.5\n", id, id),
    g_strdup_printf ("id,price_per_kg\n%s,cheap\n", id),
    g_strdup_printf ("id,price_per_kg\n%s,-1\n", id),
    g_strdup_printf ("id,price_per_kg\n%s,\"1,5\"\n", id),
    g_strdup_printf ("id;price_per_kg\n%s;1.250,5\n", id),
    g_strdup_printf ("id,price_per_kg\n%s\n", id),
  };
  static const char *const lines[] = { "Line 1", "Line 3", "Line 3", "Line 2",
                                       "Line 2", "Line 2", "Line 2", "Line 2" };
  FmPriceListResult result;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_false (read_list (self, texts[i], &result, &error));
    if (strstr (error->message, lines[i]) == NULL)
      g_error ("%s is not in: %s", lines[i], error->message);
  }
  g_autoptr (GHashTable) today = fm_prices_today (self->notebook, NULL);
  g_assert_cmpuint (g_hash_table_size (today), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_free (texts[i]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/price-list/out-and-in", Fixture, NULL, set_up, test_out_and_in, tear_down);
  g_test_add ("/price-list/version-keeps-its-own", Fixture, NULL, set_up,
              test_version_keeps_its_own, tear_down);
  g_test_add ("/price-list/bad", Fixture, NULL, set_up, test_bad, tear_down);
  return g_test_run ();
}

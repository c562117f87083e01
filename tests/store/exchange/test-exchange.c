/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-exchange.c - a notebook as open data and back, and what is refused */
#include "store/exchange/fm-exchange.h"

#include <string.h>

#include "store-fixture.h"
#include "store/demo/fm-demo.h"
#include "store/fm-experiments.h"
#include "store/fm-food-store.h"
#include "store/fm-prices.h"
#include "store/notebook/fm-db.h"

#define N_NOTEBOOKS 12

static const FmExchangePart whole = { 0 };

static char *
in_folder (const Fixture *self, const char *name)
{
  return g_build_filename (self->folder, name, NULL);
}

static char *
export_to (const Fixture *self, FmNotebook *notebook, const FmExchangePart *part, const char *name)
{
  g_autofree char *path = in_folder (self, name);
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  fm_exchange_export (notebook, part, path, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

static FmNotebook *
import_from (const Fixture *self, const char *name, const char *notebook_name)
{
  g_autofree char *path = in_folder (self, name);
  g_autofree char *notebook_path = in_folder (self, notebook_name);
  g_autoptr (GError) error = NULL;
  FmNotebook *notebook = fm_exchange_import (path, notebook_path, NULL, &error);

  g_assert_no_error (error);
  return notebook;
}

/* Out, in, out again: the bytes are the same, and so is the notebook after it was opened anew. */
static void
assert_round_trip (const Fixture *self, FmNotebook *notebook, const FmExchangePart *part)
{
  g_autofree char *first = export_to (self, notebook, part, "first.json");
  g_autofree char *path = in_folder (self, "again.forcemeat");
  g_autoptr (FmNotebook) made = import_from (self, "first.json", "again.forcemeat");
  g_autofree char *second = export_to (self, made, &whole, "second.json");

  g_assert_cmpstr (first, ==, second);
  g_clear_pointer (&made, fm_notebook_unref);
  g_autoptr (FmNotebook) opened = open_notebook (path);
  g_autofree char *third = export_to (self, opened, &whole, "second.json");
  g_assert_cmpstr (first, ==, third);
  g_clear_pointer (&opened, fm_notebook_unref);
  g_unlink (path);
}

static void
add_random_experiment (FmNotebook *notebook, gint64 version_id)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GError) error = NULL;

  experiment->version_id = version_id;
  experiment->title = random_text ();
  experiment->notes = random_text ();
  experiment->made_at = g_test_rand_int_range (0, G_MAXINT);
  experiment->rating = g_test_rand_int_range (0, 11);
  experiment->rest_minutes = g_test_rand_double_range (0.0, 60.0);
  for (int i = g_test_rand_int_range (0, 4); i > 0; i--)
    fm_experiment_add_weighing (experiment, NULL, "Shoulder", g_test_rand_double_range (0.0, 900.0),
                                g_test_rand_double_range (0.0, 900.0));
  fm_experiments_save (notebook, experiment, &error);
  g_assert_no_error (error);
}

static void
add_random_blend (FmNotebook *notebook)
{
  const gint64 blend_id = add_blend (notebook, "Blend = \"A\" \\ 脂");

  for (int i = g_test_rand_int_range (1, 4); i > 0; i--) {
    g_autoptr (FmFormula) formula = random_formula ();
    g_autoptr (FmIngredient) ingredient = random_ingredient ();

    fm_formula_add (formula, ingredient, 500.0);
    const gint64 version_id = save_version (notebook, blend_id, formula, "Because + more\nlines");

    for (int j = g_test_rand_int_range (0, 3); j > 0; j--)
      add_random_experiment (notebook, version_id);
  }
}

static FmNotebook *
random_notebook (const Fixture *self)
{
  FmNotebook *notebook = create_notebook (self->path);
  g_autoptr (FmIngredient) own = random_ingredient ();

  for (int i = g_test_rand_int_range (0, 3); i > 0; i--)
    add_random_blend (notebook);
  g_assert_true (fm_notebook_set_setting (notebook, "currency", "€", NULL));
  fm_ingredients_save (notebook, own, NULL);
  return notebook;
}

static void
test_generated (Fixture *self, gconstpointer data)
{
  for (int i = 0; i < N_NOTEBOOKS; i++) {
    g_autoptr (FmNotebook) notebook = random_notebook (self);

    assert_round_trip (self, notebook, &whole);
    g_clear_pointer (&notebook, fm_notebook_unref);
    g_unlink (self->path);
  }
}

static FmNotebook *
demo_notebook (const Fixture *self)
{
  g_autoptr (FmFoodStore) foods = fm_food_store_open (BUILDDIR "/data/sr28.db", NULL);
  FmNotebook *notebook = fm_demo_create (self->path, foods, NULL, NULL);

  g_assert_nonnull (notebook);
  return notebook;
}

/* Photos, sealed and opened tastings, maps: what the demo has, whole and in parts. */
static void
test_demo (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = demo_notebook (self);
  const FmExchangePart blend = { .blend_id = 1 };
  const FmExchangePart version = { .version_id = 3 };
  const FmExchangePart experiment = { .experiment_id = 2 };

  assert_round_trip (self, notebook, &whole);
  assert_round_trip (self, notebook, &blend);
  assert_round_trip (self, notebook, &version);
  assert_round_trip (self, notebook, &experiment);
}

/* That all is invented is said by every part, and by what is made of it. */
static void
test_invented (Fixture *self, gconstpointer data)
{
  const FmExchangePart parts[] = { whole, { .blend_id = 1 } };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++) {
    g_autofree char *out = g_strdup_printf ("part-%u.json", i);
    g_autofree char *in = g_strdup_printf ("part-%u.forcemeat", i);
    g_autoptr (FmNotebook) notebook = demo_notebook (self);
    g_autofree char *text = export_to (self, notebook, &parts[i], out);
    g_autoptr (FmNotebook) made = import_from (self, out, in);

    g_assert_nonnull (strstr (text, fm_invented_words ()));
    g_assert_cmpstr (fm_notebook_invented (made), ==, fm_invented_words ());
  }
}

/* What is imported may be searched and is as frozen as it was. */
static void
test_imported_lives (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  const FmExperimentFilter filter = { .text = "juicy" };
  g_autoptr (GError) error = NULL;

  experiment->version_id = save_version (notebook, add_blend (notebook, "House"), formula, "First");
  experiment->notes = g_strdup ("Very juicy");
  g_assert_true (fm_experiments_save (notebook, experiment, NULL));
  g_autofree char *text = export_to (self, notebook, &whole, "out.json");
  g_autoptr (FmNotebook) made = import_from (self, "out.json", "made.forcemeat");
  g_autoptr (GPtrArray) found = fm_experiments_list (made, &filter, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, 1);
  FmDb *db = fm_notebook_begin (made, &error);
  g_assert_false (fm_db_exec (db, "UPDATE versions SET reason = 'Other'", NULL));
  fm_notebook_end (made, FALSE, NULL);
}

static void
assert_refused (Fixture *self, const char *text, int code, const char *words)
{
  g_autofree char *path = in_folder (self, "bad.json");
  g_autofree char *notebook_path = in_folder (self, "bad.forcemeat");
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  g_assert_null (fm_exchange_import (path, notebook_path, NULL, &error));
  g_assert_nonnull (error);
  if (code >= 0)
    g_assert_error (error, FM_STORE_ERROR, code);
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” is not in: %s", words, error->message);
  g_assert_false (g_file_test (notebook_path, G_FILE_TEST_EXISTS));
}

#define HEAD "{\"format\": \"forcemeat open data\", \"edition\": 1"

static void
test_refused (Fixture *self, gconstpointer data)
{
  assert_refused (self, "{\n\"format\": \"forcemeat open data\",\n]", -1, "bad.json:2:");
  assert_refused (self, "{\"name\": \"x\"}", FM_STORE_ERROR_NOT_A_NOTEBOOK, "no open data");
  assert_refused (self, "[]", FM_STORE_ERROR_NOT_A_NOTEBOOK, "no open data");
  assert_refused (self, "{\"format\": \"forcemeat open data\", \"edition\": 9999}",
                  FM_STORE_ERROR_NEWER, "newer program");
  assert_refused (self, HEAD ", \"moons\": []}", FM_STORE_ERROR_DAMAGED, "moons");
  assert_refused (self, HEAD ", \"blends\": [7]}", FM_STORE_ERROR_DAMAGED, "row 1");
  assert_refused (self,
                  HEAD ", \"blends\": [{\"id\": 1, \"name\": \"A\", \"created_at\": 0},"
                       " {\"id\": 2, \"moon\": 3}]}",
                  FM_STORE_ERROR_DAMAGED, "“blends”, row 2: “moon” is not known here");
  assert_refused (self, HEAD ", \"blends\": [{\"id\": 1, \"name\": [], \"created_at\": 0}]}",
                  FM_STORE_ERROR_DAMAGED, "neither a number nor a text");
  assert_refused (self,
                  HEAD ", \"blends\": [{\"id\": 1, \"name\": \"A\", \"created_at\": 0}],"
                       " \"versions\": [{\"id\": 1, \"blend_id\": 1, \"number\": 1, \"reason\": "
                       "\"R\", \"saved_at\": 0, \"n_lines\": 0, \"formula\": {\"lines\": 5}}]}",
                  -1, "“versions”, row 1");
  assert_refused (self,
                  HEAD ", \"photo_blobs\": [{\"sha256\": \"../../etc/passwd\", \"mime\": \"x\","
                       " \"width_px\": 1, \"height_px\": 1, \"size_bytes\": 1}]}",
                  -1, "“photo_blobs”, row 1");
  /* A reference into nothing. */
  assert_refused (self, HEAD ", \"drafts\": [{\"blend_id\": 5, \"saved_at\": 0, \"formula\": {}}]}",
                  -1, "");
}

static void
test_changed_photo (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = demo_notebook (self);
  g_autofree char *text = export_to (self, notebook, &whole, "out.json");
  g_autofree char *json = in_folder (self, "out.json");
  g_autofree char *folder = in_folder (self, "out-photos");
  g_autofree char *path = in_folder (self, "made.forcemeat");
  g_autoptr (GError) error = NULL;
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL && strchr (name, '.') != NULL)
    continue;
  g_autofree char *photo = g_build_filename (folder, name, NULL);
  g_dir_close (dir);
  g_assert_true (g_file_set_contents (photo, "no photo", -1, NULL));
  g_assert_null (fm_exchange_import (json, path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static void
test_no_such_part (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autofree char *path = in_folder (self, "out.json");
  const FmExchangePart part = { .blend_id = 7 };
  g_autoptr (GError) error = NULL;

  g_assert_false (fm_exchange_export (notebook, &part, path, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

/* Each list of a notebook has its lines in docs/open-data.md. */
static void
test_documented (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autofree char *out = export_to (self, notebook, &whole, "out.json");
  g_auto (GStrv) lines = g_strsplit (out, "\n", -1);
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (SRCDIR "/docs/open-data.md", &text, NULL, NULL));
  for (guint i = 3; lines[i] != NULL; i++) {
    g_autofree char *name = g_strdup (lines[i]);
    g_autofree char *heading = NULL;

    if (name[0] != '"')
      continue;
    name[strcspn (name + 1, "\"") + 1] = '\0';
    heading = g_strdup_printf ("`%s`", name + 1);
    if (strstr (text, heading) == NULL)
      g_error ("%s is not in docs/open-data.md", heading);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/exchange/generated", test_generated);
  FIXTURE_TEST ("/exchange/demo", test_demo);
  FIXTURE_TEST ("/exchange/imported-lives", test_imported_lives);
  FIXTURE_TEST ("/exchange/refused", test_refused);
  FIXTURE_TEST ("/exchange/changed-photo", test_changed_photo);
  FIXTURE_TEST ("/exchange/invented", test_invented);
  FIXTURE_TEST ("/exchange/no-such-part", test_no_such_part);
  FIXTURE_TEST ("/exchange/documented", test_documented);
  return g_test_run ();
}

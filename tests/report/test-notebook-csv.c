/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-notebook-csv.c - a notebook as tables for a spreadsheet */
#include "report/fm-notebook-csv.h"

#include <glib/gstdio.h>
#include <string.h>

#include "blends.h"
#include "store/fm-experiments.h"
#include "store/fm-versions.h"

typedef struct {
  char *folder;
  FmNotebook *notebook;
} Fixture;

/* Names as somebody could give them to run something in a spreadsheet. */
static void
set_up (Fixture *self, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autofree char *path = NULL;

  self->folder = g_dir_make_tmp ("forcemeat-XXXXXX", NULL);
  path = g_build_filename (self->folder, "test.forcemeat", NULL);
  self->notebook = fm_notebook_create (path, NULL);
  add_line (formula, "=HYPERLINK(\"http://x\")", 12.5, 600.25);
  add_line (formula, "+1", 80.0, 399.75);
  const gint64 blend_id = fm_blends_add (self->notebook, "@blend", NULL);
  experiment->version_id = fm_versions_save (self->notebook, blend_id, formula, "r", NULL);
  experiment->title = g_strdup ("-2+3");
  experiment->notes = g_strdup ("Two\nlines; and \"quotes\"");
  g_assert_true (fm_experiments_save (self->notebook, experiment, NULL));
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  GDir *dir = g_dir_open (self->folder, 0, NULL);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir)) {
    g_autofree char *path = g_build_filename (self->folder, name, NULL);
    g_unlink (path);
  }
  g_dir_close (dir);
  g_rmdir (self->folder);
  g_free (self->folder);
}

static void
assert_says (const char *text, const char *words)
{
  if (strstr (text, words) == NULL)
    g_error ("“%s” is not in: %s", words, text);
}

/* No cell begins as a formula: not at the start, nor behind a separator, with or without quotes. */
static void
assert_harmless (const char *text, char separator)
{
  for (const char *c = text; *c != '\0'; c++) {
    const char *cell = c + 1 + (c[1] == '"' ? 1 : 0);

    if (*c == separator || *c == '\n')
      g_assert_true (*cell == '\0' || strchr ("=+-@", *cell) == NULL);
  }
}

static void
test_tables (Fixture *self, gconstpointer data)
{
  const FmCsvStyle point = { ',', '.' }, comma = { ';', ',' };

  for (int i = 0; i < FM_N_NOTEBOOK_CSVS; i++) {
    g_autoptr (GError) error = NULL;
    g_autofree char *text = fm_notebook_csv (self->notebook, (FmNotebookCsv)i, point, &error);
    g_assert_no_error (error);
    g_assert_true (g_str_has_prefix (text, "\xef\xbb\xbf\""));
    assert_harmless (text, ',');
    g_autofree char *other = fm_notebook_csv (self->notebook, (FmNotebookCsv)i, comma, &error);
    assert_harmless (other, ';');
  }
}

static void
test_cells (Fixture *self, gconstpointer data)
{
  const FmCsvStyle point = { ',', '.' }, comma = { ';', ',' };
  g_autofree char *formulas =
      fm_notebook_csv (self->notebook, FM_NOTEBOOK_CSV_FORMULAS, point, NULL);
  g_autofree char *german = fm_notebook_csv (self->notebook, FM_NOTEBOOK_CSV_FORMULAS, comma, NULL);
  g_autofree char *experiments =
      fm_notebook_csv (self->notebook, FM_NOTEBOOK_CSV_EXPERIMENTS, point, NULL);
  g_autofree char *nutrition =
      fm_notebook_csv (self->notebook, FM_NOTEBOOK_CSV_NUTRITION, point, NULL);

  assert_says (formulas,
               "\"'@blend\",1,1,\"'=HYPERLINK(\"\"http://x\"\")\",600.2500,60.0250,12.5000,,");
  assert_says (german,
               "\"'@blend\";1;1;\"'=HYPERLINK(\"\"http://x\"\")\";600,2500;60,0250;12,5000;;");
  assert_says (experiments, "\"'-2+3\"");
  assert_says (experiments, "\"Two\nlines; and \"\"quotes\"\"\"");
  assert_says (nutrition, "\"Total fat\",\"g\",");
  assert_says (nutrition, "\"Sodium\",\"mg\",,,0.0000");
}

/* Only the first line, before the names of the columns. */
static void
test_invented (Fixture *self, gconstpointer data)
{
  const FmCsvStyle point = { ',', '.' };
  g_autofree char *line = g_strdup_printf ("\xef\xbb\xbf\"%s\"\r\n", fm_invented_words ());

  g_assert_true (fm_notebook_set_setting (self->notebook, FM_SETTING_INVENTED, "so", NULL));
  for (int i = 0; i < FM_N_NOTEBOOK_CSVS; i++) {
    g_autofree char *text = fm_notebook_csv (self->notebook, (FmNotebookCsv)i, point, NULL);

    g_assert_true (g_str_has_prefix (text, line));
  }
}

static void
test_files (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (
      fm_notebook_csv_write (self->notebook, self->folder, fm_csv_style_of_locale (), &error));
  for (int i = 0; i < FM_N_NOTEBOOK_CSVS; i++) {
    g_autofree char *name = g_strconcat (fm_notebook_csv_name ((FmNotebookCsv)i), ".csv", NULL);
    g_autofree char *path = g_build_filename (self->folder, name, NULL);

    g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/notebook-csv/tables", Fixture, NULL, set_up, test_tables, tear_down);
  g_test_add ("/notebook-csv/cells", Fixture, NULL, set_up, test_cells, tear_down);
  g_test_add ("/notebook-csv/invented", Fixture, NULL, set_up, test_invented, tear_down);
  g_test_add ("/notebook-csv/files", Fixture, NULL, set_up, test_files, tear_down);
  return g_test_run ();
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-development-report.c - how a blend became what it is, on paper */
#include "report/fm-development-report.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gstdio.h>
#include <string.h>

#include "blends.h"
#include "report/fm-batch-sheet-paint.h"
#include "store/fm-experiments.h"

typedef struct {
  char *folder;
  FmNotebook *notebook;
  gint64 blend_id;
  gint64 experiment_id;
} Fixture;

static GBytes *
new_photo (void)
{
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, 40, 30);
  char *buffer = NULL;
  gsize size = 0;

  gdk_pixbuf_fill (pixbuf, 0x884422ff);
  g_assert_true (gdk_pixbuf_save_to_buffer (pixbuf, &buffer, &size, "png", NULL, NULL));
  return g_bytes_new_take (buffer, size);
}

/* Versions 1 and 2 in a row, 3 a branch of 1, and an experiment of 2 with a photo. */
static void
set_up (Fixture *self, gconstpointer data)
{
  g_autofree char *path = NULL;
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GBytes) photo = new_photo ();

  self->folder = g_dir_make_tmp ("forcemeat-XXXXXX", NULL);
  path = g_build_filename (self->folder, "test.forcemeat", NULL);
  self->notebook = fm_notebook_create (path, NULL);
  self->blend_id = fm_blends_add (self->notebook, "Pan patty", NULL);
  const gint64 first = fm_versions_save (self->notebook, self->blend_id, formula, "start", NULL);
  experiment->version_id =
      fm_versions_save (self->notebook, self->blend_id, formula, "again", NULL);
  g_assert_true (fm_draft_branch (self->notebook, self->blend_id, first, NULL));
  fm_versions_save (self->notebook, self->blend_id, formula, "other way", NULL);
  experiment->title = g_strdup ("Sunday");
  experiment->notes = g_strdup ("Held together well.");
  experiment->rating = 7;
  g_assert_true (fm_experiments_save (self->notebook, experiment, NULL));
  self->experiment_id = experiment->id;
  g_assert_cmpint (fm_photos_add (self->notebook, experiment->id, photo, "The cut", NULL, NULL), >,
                   0);
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  GDir *dir;

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

static void
assert_says (const char *text, const char *words)
{
  if (strstr (text, words) == NULL)
    g_error ("“%s” is not in: %s", words, text);
}

static void
test_report (Fixture *self, gconstpointer data)
{
  g_autoptr (GArray) chosen = g_array_new (FALSE, FALSE, sizeof (gint64));
  const FmDevelopmentReportInput input = { self->blend_id, "Pan patty", "test", "1/2/26", chosen };
  g_autoptr (GError) error = NULL;

  g_array_append_val (chosen, self->experiment_id);
  g_autoptr (FmBatchSheet) sheet = fm_development_report_new (self->notebook, &input, NULL, &error);
  g_assert_no_error (error);
  g_autofree char *text = fm_batch_sheet_text (sheet);
  assert_says (text, "Development report: Pan patty, up to version 3");
  assert_says (text, "\nVersion 2, from version 1,");
  assert_says (text, "\n\u2003Version 3, from version 1,"); /* a branch stands further in */
  assert_says (text, "Sunday: version 2,");
  assert_says (text, "rated 7 of 10.");
  assert_says (text, "Held together well.");
  assert_says (text, "The cut");
  assert_says (text, "No opened tasting");
  assert_says (text, "Undercooked ground meat");
  g_autoptr (GBytes) pdf = fm_batch_sheet_to_pdf (sheet, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (g_bytes_get_size (pdf), >, 2000);
}

static void
test_cancelled (Fixture *self, gconstpointer data)
{
  g_autoptr (GArray) chosen = g_array_new (FALSE, FALSE, sizeof (gint64));
  const FmDevelopmentReportInput input = { self->blend_id, "Pan patty", NULL, NULL, chosen };
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_array_append_val (chosen, self->experiment_id);
  g_cancellable_cancel (cancellable);
  g_assert_null (fm_development_report_new (self->notebook, &input, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/development-report/whole", Fixture, NULL, set_up, test_report, tear_down);
  g_test_add ("/development-report/cancelled", Fixture, NULL, set_up, test_cancelled, tear_down);
  return g_test_run ();
}

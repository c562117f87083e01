/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-result-job.c - looking at an opened tasting keeps what it found once */
#include "app/tastings/fm-tasting-result-job.h"
#include "tasting-fixture.h"

static void
keep_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  GAsyncResult **kept = user_data;

  *kept = g_object_ref (result);
}

static GAsyncResult *
wait_for (GAsyncResult **result)
{
  while (*result == NULL)
    g_main_context_iteration (NULL, TRUE);
  return *result;
}

/* As the result page does, each time that it is shown. Returns whether something was written. */
static gboolean
look_at (Fixture *fixture, const FmTasting *tasting)
{
  g_autoptr (GAsyncResult) read = NULL;
  g_autoptr (GAsyncResult) kept = NULL;
  g_autoptr (FmTastingReading) reading = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_new = FALSE;

  fm_tasting_result_job_read_async (tasting, NULL, keep_cb, &read);
  reading = fm_tasting_result_job_read_finish (wait_for (&read), &error);
  g_assert_no_error (error);
  fm_tasting_result_job_keep_async (fixture->notebook, tasting, reading, keep_cb, &kept);
  g_assert_true (fm_tasting_result_job_keep_finish (wait_for (&kept), &is_new, &error));
  g_assert_no_error (error);
  return is_new;
}

static void
test_looking (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_opened (fixture);

  save_tasting (fixture, tasting);
  g_assert_true (look_at (fixture, tasting));
  g_assert_false (look_at (fixture, tasting));
  fixture_reopen (fixture);
  g_assert_false (look_at (fixture, tasting));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/result-job/looking", Fixture, NULL, fixture_set_up, test_looking,
              fixture_tear_down);
  return g_test_run ();
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* Backups by a clock that the test sets: what is kept of which day. */
#include <string.h>

#include "store-fixture.h"
#include "store/fm-backup.h"

#define N_DAYS_OF_USE 800

static GDate
day_of (int year, int month, int day)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay)day, (GDateMonth)month, (GDateYear)year);
  return date;
}

/* Opened every day for more than two years, thinned out every day. */
static void
test_daily_use (void)
{
  g_autoptr (GPtrArray) days = g_ptr_array_new_with_free_func ((GDestroyNotify)g_date_free);
  GDate today = day_of (2026, 1, 1);

  for (int i = 0; i < N_DAYS_OF_USE; i++, g_date_add_days (&today, 1)) {
    g_autofree gboolean *keeps = g_new (gboolean, days->len + 1);

    g_ptr_array_insert (days, 0, g_date_copy (&today));
    fm_backup_choose (days, &today, keeps);
    for (guint k = days->len; k-- > 0;)
      if (!keeps[k])
        g_ptr_array_remove_index (days, k);
    g_assert_cmpuint (days->len, <=, 7 + 4 + 12);
    /* The last seven days are all there. */
    for (int k = 0; k < MIN (i + 1, 7); k++)
      g_assert_cmpint (g_date_days_between (g_ptr_array_index (days, k), &today), ==, k);
  }
  /* Of a year and more ago the last backup of its month is there, and nothing older. */
  const GDate *oldest = g_ptr_array_index (days, days->len - 1);
  const int age_days = g_date_days_between (oldest, &today);
  g_test_message ("%u kept, the oldest %d days old", days->len, age_days);
  g_assert_cmpint (age_days, >, 300);
  g_assert_cmpint (age_days, <, 366);
  g_assert_true (g_date_get_day (oldest) ==
                 g_date_get_days_in_month (g_date_get_month (oldest), g_date_get_year (oldest)));
}

/* Used once in a while, on days that are given. */
static void
test_chosen_days (void)
{
  static const struct {
    int year, month, day;
    gboolean is_kept;
  } cases[] = {
    { 2026, 12, 9, TRUE },   /* tomorrow: the clock was set back */
    { 2026, 12, 8, TRUE },   /* today, a Tuesday */
    { 2026, 12, 2, TRUE },   /* six days ago, a Wednesday */
    { 2026, 12, 1, FALSE },  /* the same week, a Tuesday */
    { 2026, 11, 30, TRUE },  /* the newest of November */
    { 2026, 11, 29, TRUE },  /* the newest of its week, a Sunday */
    { 2026, 11, 27, FALSE }, /* the same week */
    { 2026, 11, 17, TRUE },  /* the first of the four weeks */
    { 2026, 11, 15, FALSE }, /* the week before, and November is there */
    { 2026, 1, 3, TRUE },    /* January is one of twelve months */
    { 2025, 12, 31, FALSE }, /* the month before those */
  };
  g_autoptr (GPtrArray) days = g_ptr_array_new_with_free_func ((GDestroyNotify)g_date_free);
  gboolean keeps[G_N_ELEMENTS (cases)];
  const GDate today = day_of (2026, 12, 8);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const GDate day = day_of (cases[i].year, cases[i].month, cases[i].day);
    g_ptr_array_add (days, g_date_copy (&day));
  }
  fm_backup_choose (days, &today, keeps);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_test_message ("%d-%d-%d", cases[i].year, cases[i].month, cases[i].day);
    g_assert_true (keeps[i] == cases[i].is_kept);
  }
}

static void
keep (FmNotebook *notebook, int year, int month, int day)
{
  g_autoptr (GError) error = NULL;
  const GDate today = day_of (year, month, day);

  g_assert_true (fm_backup_keep (notebook, &today, NULL, &error));
  g_assert_no_error (error);
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (dir != NULL && g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
test_files (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (FmFormula) formula = new_formula (700, 300);
  g_autofree char *folder = fm_backup_folder (self->path);
  g_autofree char *own = g_build_filename (folder, "test 2020-01-01 of mine.forcemeat", NULL);
  g_autofree char *old = g_build_filename (folder, "test 2024-05-05.forcemeat", NULL);
  g_autofree char *kept = g_build_filename (folder, "test 2026-05-06.forcemeat", NULL);

  /* Nothing is in it yet that could be lost. */
  keep (notebook, 2024, 5, 5);
  g_assert_false (g_file_test (folder, G_FILE_TEST_EXISTS));
  save_version (notebook, add_blend (notebook, "House"), formula, "First");
  keep (notebook, 2024, 5, 5);
  keep (notebook, 2024, 5, 5);
  g_assert_true (g_file_test (old, G_FILE_TEST_EXISTS));
  g_assert_cmpuint (count_files (folder), ==, 1);
  g_assert_true (g_file_set_contents (own, "mine", -1, NULL));
  keep (notebook, 2026, 5, 6);
  g_assert_false (g_file_test (old, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_test (own, G_FILE_TEST_EXISTS));
  g_clear_pointer (&notebook, fm_notebook_unref);
  /* What was kept is a whole notebook. */
  notebook = open_notebook (kept);
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);
  g_assert_cmpuint (blends->len, ==, 1);
  g_clear_pointer (&notebook, fm_notebook_unref);
  g_assert_cmpuint (count_files (folder), ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/backup/daily-use", test_daily_use);
  g_test_add_func ("/backup/chosen-days", test_chosen_days);
  FIXTURE_TEST ("/backup/files", test_files);
  return g_test_run ();
}

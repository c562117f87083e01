/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-search.c - food search beside the same full-text query in the sqlite3 shell
 *
 * One shell runs the query many times, so that its start counts only once.
 */
#include <gio/gio.h>

#include "store/fm-food-store.h"

#define N_RUNS 200

typedef struct {
  const char *typed;
  const char *match; /* the same words as the full-text index takes them */
} Query;

static const Query queries[] = {
  { "chuck short rib", "chuck* short* rib*" },
  { "80/20", "80x20*" },
  { "ground beef 80", "ground* beef* 80*" },
  { "por", "por*" },
  { "beef", "beef*" },
};

/* With typing errors or in another language: the whole dictionary is compared. */
static const char *const mistyped[] = { "briskett", "chcuk short rib", "tendreloin", "rinderbrusst",
                                        "grond beff 80" };

static double
ms_since (gint64 start)
{
  return (double)(g_get_monotonic_time () - start) / 1000.0;
}

static double
store_ms (FmFoodStore *foods, const char *text)
{
  gint64 start = g_get_monotonic_time ();

  for (int i = 0; i < N_RUNS; i++) {
    g_autoptr (GPtrArray) hits = fm_food_store_search (foods, text, 30, NULL, NULL);

    g_assert_nonnull (hits);
  }
  return ms_since (start) / N_RUNS;
}

static double
shell_ms (const char *path, const char *match)
{
  g_autoptr (GString) script = g_string_new (".output /dev/null\n");
  g_autoptr (GSubprocess) shell = NULL;
  gint64 start;

  for (int i = 0; i < N_RUNS; i++)
    g_string_append_printf (script,
                            "SELECT rowid FROM food_index WHERE food_index MATCH '%s' "
                            "ORDER BY rank LIMIT 30;\n",
                            match);
  start = g_get_monotonic_time ();
  shell =
      g_subprocess_new (G_SUBPROCESS_FLAGS_STDIN_PIPE, NULL, "sqlite3", "-readonly", path, NULL);
  if (shell == NULL || !g_subprocess_communicate_utf8 (shell, script->str, NULL, NULL, NULL, NULL))
    g_error ("this benchmark needs the sqlite3 shell");
  return ms_since (start) / N_RUNS;
}

int
main (void)
{
  g_autofree char *path = fm_food_store_default_path ();
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFoodStore) foods = fm_food_store_open (path, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < G_N_ELEMENTS (queries); i++) {
    double ours_ms = store_ms (foods, queries[i].typed);
    double theirs_ms = shell_ms (path, queries[i].match);

    g_print ("search \"%s\": %.2f ms, shell %.2f ms, ratio %.2f (aim 2)\n", queries[i].typed,
             ours_ms, theirs_ms, ours_ms / theirs_ms);
  }
  for (guint i = 0; i < G_N_ELEMENTS (mistyped); i++)
    g_print ("search with typing errors \"%s\": %.2f ms over %u foods (aim 8 ms)\n", mistyped[i],
             store_ms (foods, mistyped[i]), fm_food_store_n_foods (foods));
  return 0;
}

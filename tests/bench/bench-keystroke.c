/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-keystroke.c - from one keystroke to updated numbers on the formula page
 *
 * A blend of 30 lines, then one of 200, in a real window: text is put into a grams entry as typing
 * does, and the time until every number is set and until the frame with them is painted is told
 * beside one frame at 60 Hz. Needs a display; run it under xvfb-run.
 */
#include <adwaita.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <time.h>

#include "app/formula/fm-formula-page.h"
#include "store/fm-versions.h"

#define N_KEYSTROKES 100
#define FRAME_MS (1000.0 / 60.0)

static double
now_ms (void)
{
  return (double)g_get_monotonic_time () / 1000.0;
}

/* Work of this thread alone: other programs on a busy machine do not count. */
static double
cpu_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

static FmFormula *
make_formula (guint n_lines)
{
  FmFormula *formula = fm_formula_new ();

  for (guint i = 0; i < n_lines; i++) {
    g_autofree char *name = g_strdup_printf ("Beef, invented cut number %u, lean and fat, raw", i);
    g_autoptr (FmIngredient) ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);

    for (guint n = 0; n < FM_N_NUTRIENTS; n++)
      ingredient->composition.per_100g[n] = 1.0 + (double)((i * 7 + n) % 20);
    fm_formula_add (formula, ingredient, 50.0 + i);
  }
  return formula;
}

/* The first GtkEntry of the page is the grams entry of the first line. */
static GtkWidget *
find_entry (GtkWidget *widget)
{
  if (GTK_IS_ENTRY (widget))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_entry (child);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static void
after_paint_cb (GdkFrameClock *clock, gboolean *painted)
{
  *painted = TRUE;
}

static int
compare_doubles (const void *a, const void *b)
{
  const double x = *(const double *)a;
  const double y = *(const double *)b;

  return (x > y) - (x < y);
}

static void
report (guint n_lines, const char *what, double *times_ms)
{
  qsort (times_ms, N_KEYSTROKES, sizeof (double), compare_doubles);
  g_print ("keystroke at %u lines, %s: median %.2f ms, 95th percentile %.2f ms, "
           "%.2f x a frame of 16.7 ms\n",
           n_lines, what, times_ms[N_KEYSTROKES / 2], times_ms[N_KEYSTROKES * 95 / 100],
           times_ms[N_KEYSTROKES / 2] / FRAME_MS);
}

static void
wait_for_frame (GdkFrameClock *clock, gboolean *painted)
{
  const double until = now_ms () + 1000.0;

  *painted = FALSE;
  while (!*painted && now_ms () < until)
    g_main_context_iteration (NULL, TRUE);
}

static void
measure (GtkWidget *window, GtkWidget *page, guint n_lines)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  GtkWidget *entry = find_entry (page);
  double edit_ms[N_KEYSTROKES];
  double frame_ms[N_KEYSTROKES];
  double work_ms[N_KEYSTROKES];
  gboolean painted = FALSE;

  g_signal_connect (clock, "after-paint", G_CALLBACK (after_paint_cb), &painted);
  wait_for_frame (clock, &painted);
  for (guint i = 0; i < N_KEYSTROKES; i++) {
    g_autofree char *text = g_strdup_printf ("%u", 60 + i);
    const double start_ms = now_ms ();
    const double start_cpu_ms = cpu_ms ();

    gtk_editable_set_text (GTK_EDITABLE (entry), text);
    edit_ms[i] = cpu_ms () - start_cpu_ms;
    wait_for_frame (clock, &painted);
    frame_ms[i] = now_ms () - start_ms;
    work_ms[i] = cpu_ms () - start_cpu_ms;
  }
  g_signal_handlers_disconnect_by_data (clock, &painted);
  report (n_lines, "numbers set, processor time", edit_ms);
  report (n_lines, "frame painted, processor time", work_ms);
  report (n_lines, "frame painted, by the clock", frame_ms);
}

static void
run (GtkWidget *window, const char *dir, guint n_lines)
{
  g_autofree char *path = g_strdup_printf ("%s/bench-%u" FM_NOTEBOOK_SUFFIX, dir, n_lines);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFormula) formula = make_formula (n_lines);
  g_autoptr (FmSession) session = fm_session_new ();
  FmNotebook *notebook = fm_notebook_create (path, &error);
  gint64 blend_id = 0;
  GtkWidget *page = g_object_new (FM_TYPE_FORMULA_PAGE, NULL);
  int minimum = 0;

  if (notebook != NULL)
    blend_id = fm_blends_add (notebook, "Bench", &error);
  if (blend_id == 0 || !fm_draft_save (notebook, blend_id, formula, &error))
    g_error ("%s", error->message);
  fm_session_set_notebook (session, notebook);
  fm_session_show_blend (session, blend_id);
  fm_session_flush (session);
  fm_page_set_session (FM_PAGE (page), session);
  adw_window_set_content (ADW_WINDOW (window), page);
  gtk_window_set_default_size (GTK_WINDOW (window), 900, 800);
  gtk_window_present (GTK_WINDOW (window));
  measure (window, page, n_lines);
  gtk_widget_measure (page, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  g_print ("least width of the page: %d px\n", minimum);
  fm_session_flush (session);
  gtk_window_destroy (GTK_WINDOW (window));
  fm_session_set_notebook (session, NULL);
}

static void
remove_directory (const char *dir)
{
  g_autoptr (GDir) entries = g_dir_open (dir, 0, NULL);
  const char *name = NULL;

  while (entries != NULL && (name = g_dir_read_name (entries)) != NULL) {
    g_autofree char *path = g_build_filename (dir, name, NULL);

    g_unlink (path);
  }
  g_rmdir (dir);
}

int
main (void)
{
  static const guint n_lines[] = { 30, 200 };
  g_autoptr (GError) error = NULL;
  g_autofree char *dir = g_dir_make_tmp ("forcemeat-bench-XXXXXX", &error);

  if (dir == NULL)
    g_error ("%s", error->message);
  adw_init ();
  for (guint i = 0; i < G_N_ELEMENTS (n_lines); i++)
    run (g_object_ref_sink (adw_window_new ()), dir, n_lines[i]);
  remove_directory (dir);
  return EXIT_SUCCESS;
}

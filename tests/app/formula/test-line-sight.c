/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-line-sight.c - lines of a long blend that are out of view catch up; needs a display */
#include <adwaita.h>
#include <glib/gstdio.h>

#include "app/formula/fm-formula-page.h"
#include "app/session/fm-writer.h"
#include "app/widgets/fm-number-entry.h"
#include "store/fm-versions.h"

#define N_LINES 60
#define N_NUMBERS 3

typedef struct {
  char *folder;
  FmSession *session;
  GtkWidget *window;
  GPtrArray *entries; /* FmNumberEntry: grams, share and price of each line */
} Fixture;

static void
collect_entries (GtkWidget *widget, GPtrArray *entries)
{
  if (FM_IS_NUMBER_ENTRY (widget))
    g_ptr_array_add (entries, widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    collect_entries (child, entries);
}

static GtkWidget *
find_list (GtkWidget *widget)
{
  if (GTK_IS_LIST_BOX (widget) && gtk_list_box_get_row_at_index (GTK_LIST_BOX (widget), 1) != NULL)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_list (child);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static FmNotebook *
make_notebook (const char *path, gint64 *blend_id)
{
  FmNotebook *notebook = fm_notebook_create (path, NULL);
  g_autoptr (FmFormula) formula = fm_formula_new ();

  for (guint i = 0; i < N_LINES; i++) {
    g_autofree char *name = g_strdup_printf ("Invented cut %u", i);
    g_autoptr (FmIngredient) ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);

    fm_formula_add (formula, ingredient, 100.0);
  }
  *blend_id = fm_blends_add (notebook, "Long", NULL);
  g_assert_true (fm_draft_save (notebook, *blend_id, formula, NULL));
  return notebook;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = NULL;
  GtkWidget *page = g_object_new (FM_TYPE_FORMULA_PAGE, NULL);
  gint64 blend_id;

  fixture->folder = g_dir_make_tmp ("forcemeat-sight-XXXXXX", NULL);
  path = g_build_filename (fixture->folder, "test.forcemeat", NULL);
  fixture->session = fm_session_new ();
  fm_session_set_notebook (fixture->session, make_notebook (path, &blend_id));
  fm_session_show_blend (fixture->session, blend_id);
  fm_session_flush (fixture->session);
  fm_page_set_session (FM_PAGE (page), fixture->session);
  fixture->window = g_object_ref_sink (adw_window_new ());
  adw_window_set_content (ADW_WINDOW (fixture->window), page);
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 900, 700);
  gtk_window_present (GTK_WINDOW (fixture->window));
  while (gtk_widget_get_height (find_list (page)) == 0)
    g_main_context_iteration (NULL, TRUE);
  fixture->entries = g_ptr_array_new ();
  collect_entries (find_list (page), fixture->entries);
  g_assert_cmpuint (fixture->entries->len, ==, N_NUMBERS * N_LINES);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GDir) folder = NULL;
  const char *name;

  fm_session_flush (fixture->session);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  g_object_unref (fixture->window);
  fm_session_set_notebook (fixture->session, NULL);
  g_object_unref (fixture->session);
  fm_writer_wait_closed ();
  g_ptr_array_unref (fixture->entries);
  folder = g_dir_open (fixture->folder, 0, NULL);
  while ((name = g_dir_read_name (folder)) != NULL) {
    g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

    g_remove (path);
  }
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
}

static double
share_of (Fixture *fixture, guint line)
{
  return fm_number_entry_get_value (g_ptr_array_index (fixture->entries, N_NUMBERS * line + 1));
}

/* Doubles the grams of the first line. */
static void
edit (Fixture *fixture)
{
  g_autoptr (FmFormula) next = fm_formula_copy (fm_session_get_formula (fixture->session));

  g_assert_true (fm_formula_set_mass (next, 0, 200.0, NULL));
  fm_session_edit (fixture->session, next, "Change grams", NULL);
}

/* The last line is scrolled out: it waits while one types, and then shows its new share. */
static void
test_pause (Fixture *fixture, gconstpointer data)
{
  const double before_pct = 100.0 / N_LINES;
  const double after_pct = 100.0 / (N_LINES + 1);

  edit (fixture);
  g_assert_cmpfloat_with_epsilon (share_of (fixture, 0), 2 * after_pct, 1e-9);
  g_assert_cmpfloat_with_epsilon (share_of (fixture, 1), after_pct, 1e-9);
  g_assert_cmpfloat_with_epsilon (share_of (fixture, N_LINES - 1), before_pct, 1e-9);
  while (ABS (share_of (fixture, N_LINES - 1) - after_pct) > 1e-9)
    g_main_context_iteration (NULL, TRUE);
}

static GtkAdjustment *
find_adjustment (Fixture *fixture)
{
  GtkWidget *entry = g_ptr_array_index (fixture->entries, 0);
  GtkWidget *scroller = gtk_widget_get_ancestor (entry, GTK_TYPE_SCROLLED_WINDOW);

  return gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
}

/* Scrolled into view it shows its share at once. */
static void
test_scroll (Fixture *fixture, gconstpointer data)
{
  GtkAdjustment *adjustment = find_adjustment (fixture);
  GtkWidget *list =
      gtk_widget_get_ancestor (g_ptr_array_index (fixture->entries, 0), GTK_TYPE_LIST_BOX);

  edit (fixture);
  g_assert_cmpfloat_with_epsilon (share_of (fixture, N_LINES - 1), 100.0 / N_LINES, 1e-9);
  gtk_adjustment_set_value (adjustment, gtk_widget_get_height (list));
  while (ABS (share_of (fixture, N_LINES - 1) - 100.0 / (N_LINES + 1)) > 1e-9)
    g_main_context_iteration (NULL, TRUE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add ("/line-sight/pause", Fixture, NULL, set_up, test_pause, tear_down);
  g_test_add ("/line-sight/scroll", Fixture, NULL, set_up, test_scroll, tear_down);
  return g_test_run ();
}

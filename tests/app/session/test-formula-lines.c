/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-formula-lines.c - the acts on the lines of a draft, and the list that a view shows */
#include <glib/gstdio.h>
#include <math.h>

#include "app/session/fm-formula-line-edit.h"
#include "app/session/fm-formula-line-item.h"
#include "core/base/fm-error.h"
#include "store/fm-versions.h"

typedef struct {
  char *dir;
  char *path;
  FmSession *session;
  FmFormulaLineList *lines;
  guint n_list_changes;
} Fixture;

static void
update_lines (Fixture *fixture)
{
  fm_formula_line_list_update (fixture->lines, fm_session_get_formula (fixture->session),
                               fm_session_get_analysis (fixture->session),
                               fm_session_is_editable (fixture->session));
}

static void
count_change (Fixture *fixture)
{
  fixture->n_list_changes++;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  FmNotebook *notebook = NULL;
  gint64 blend_id = 0;

  fixture->dir = g_dir_make_tmp ("forcemeat-lines-XXXXXX", &error);
  g_assert_no_error (error);
  fixture->path = g_build_filename (fixture->dir, "lines" FM_NOTEBOOK_SUFFIX, NULL);
  notebook = fm_notebook_create (fixture->path, &error);
  g_assert_no_error (error);
  blend_id = fm_blends_add (notebook, "Invented blend", &error);
  g_assert_no_error (error);
  fixture->session = fm_session_new ();
  fm_session_set_notebook (fixture->session, notebook);
  fm_session_show_blend (fixture->session, blend_id);
  fm_session_flush (fixture->session);
  fixture->lines = fm_formula_line_list_new ();
  g_signal_connect_swapped (fixture->session, "changed::formula", G_CALLBACK (update_lines),
                            fixture);
  g_signal_connect_swapped (fixture->lines, "items-changed", G_CALLBACK (count_change), fixture);
}

static void
remove_files (const char *dir)
{
  g_autoptr (GDir) entries = g_dir_open (dir, 0, NULL);
  const char *name = NULL;

  while ((name = g_dir_read_name (entries)) != NULL) {
    g_autofree char *path = g_build_filename (dir, name, NULL);

    g_unlink (path);
  }
  g_rmdir (dir);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  fm_session_flush (fixture->session);
  fm_session_set_notebook (fixture->session, NULL);
  g_signal_handlers_disconnect_by_data (fixture->session, fixture);
  g_clear_object (&fixture->session);
  g_clear_object (&fixture->lines);
  remove_files (fixture->dir);
  g_free (fixture->path);
  g_free (fixture->dir);
}

static char *
add (Fixture *fixture, const char *name, double fat_g_per_100g, double mass_g)
{
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);
  g_autoptr (GError) error = NULL;
  char *id = NULL;

  ingredient->composition.per_100g[FM_NUTRIENT_FAT] = fat_g_per_100g;
  id = fm_line_edit_add (fixture->session, ingredient);
  g_assert_nonnull (id);
  fm_line_edit_mass (fixture->session, id, mass_g, &error);
  g_assert_no_error (error);
  return id;
}

static const FmLineFigures *
figures (Fixture *fixture, guint position)
{
  g_autoptr (FmFormulaLineItem) item =
      g_list_model_get_item (G_LIST_MODEL (fixture->lines), position);

  g_assert_nonnull (item);
  return fm_formula_line_item_get_figures (item);
}

static void
test_typing_keeps_items (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 600.0);
  g_autofree char *suet = add (fixture, "Suet", 90.0, 200.0);
  const FmLineFigures *before = figures (fixture, 1);
  const guint n_changes = fixture->n_list_changes;

  fm_line_edit_mass (fixture->session, chuck, 300.0, NULL);
  g_assert_true (before == figures (fixture, 1));
  g_assert_cmpuint (fixture->n_list_changes, ==, n_changes);
  g_assert_cmpfloat_with_epsilon (before->share_pct, 40.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (before->patty_g, 72.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (before->batch_g, 432.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (before->fat_g, 180.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (before->fat_share_pct, 75.0, 1e-9);
}

static void
test_typing_is_one_undo (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 500.0);

  fm_session_seal (fixture->session);
  fm_line_edit_mass (fixture->session, chuck, 7.0, NULL);
  fm_line_edit_mass (fixture->session, chuck, 75.0, NULL);
  fm_line_edit_mass (fixture->session, chuck, 750.0, NULL);
  fm_stored_document_undo (fm_session_get_draft (fixture->session));
  g_assert_cmpfloat (figures (fixture, 0)->mass_g, ==, 500.0);
  fm_stored_document_redo (fm_session_get_draft (fixture->session));
  g_assert_cmpfloat (figures (fixture, 0)->mass_g, ==, 750.0);
}

/* On the way to "10", "100" takes all there is: the others must get their proportions back. */
static void
test_share_run_keeps_proportions (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 500.0);
  g_autofree char *brisket = add (fixture, "Brisket", 25.0, 300.0);
  g_autofree char *suet = add (fixture, "Suet", 90.0, 200.0);
  FmShareRun run = { NULL, NULL };

  fm_line_edit_share (fixture->session, chuck, 100.0, &run, NULL);
  g_assert_cmpfloat (figures (fixture, 1)->mass_g, ==, 0.0);
  fm_line_edit_share (fixture->session, chuck, 10.0, &run, NULL);
  g_assert_cmpfloat_with_epsilon (figures (fixture, 0)->mass_g, 100.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures (fixture, 1)->mass_g, 540.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures (fixture, 2)->mass_g, 360.0, 1e-9);
  fm_share_run_clear (&run);
}

static void
test_share_run_ends_with_other_edit (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 500.0);
  g_autofree char *suet = add (fixture, "Suet", 90.0, 500.0);
  FmShareRun run = { NULL, NULL };

  fm_line_edit_share (fixture->session, chuck, 60.0, &run, NULL);
  fm_line_edit_mass (fixture->session, suet, 1400.0, NULL);
  fm_line_edit_share (fixture->session, chuck, 50.0, &run, NULL);
  g_assert_cmpfloat_with_epsilon (figures (fixture, 0)->mass_g, 1000.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures (fixture, 1)->mass_g, 1000.0, 1e-9);
  fm_share_run_clear (&run);
}

static void
test_locked_lines_refuse (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 500.0);
  g_autofree char *suet = add (fixture, "Suet", 90.0, 500.0);
  g_autoptr (GError) error = NULL;
  FmShareRun run = { NULL, NULL };

  fm_line_edit_lock (fixture->session, suet, TRUE);
  g_assert_false (fm_line_edit_share (fixture->session, chuck, 80.0, &run, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_LOCKED);
  g_assert_cmpfloat (figures (fixture, 0)->mass_g, ==, 500.0);
  fm_share_run_clear (&run);
}

static void
test_bad_mass_is_refused (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 500.0);
  const double bad[] = { -1.0, NAN, INFINITY, 1e9 };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_false (fm_line_edit_mass (fixture->session, chuck, bad[i], &error));
    g_assert_nonnull (error);
    g_assert_cmpfloat (figures (fixture, 0)->mass_g, ==, 500.0);
  }
}

static void
test_new_line_fills_the_batch (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 1050.0);
  g_autoptr (FmIngredient) salt = fm_ingredient_new ("Salt", FM_INGREDIENT_SALT);
  g_autofree char *first = fm_line_edit_add (fixture->session, salt);
  g_autofree char *second = fm_line_edit_add (fixture->session, salt);

  g_assert_cmpfloat_with_epsilon (figures (fixture, 1)->mass_g, 30.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures (fixture, 2)->mass_g, 100.0, 1e-9);
  g_assert_cmpuint (fm_formula_n_duplicates (fm_session_get_formula (fixture->session)), ==, 1);
  fm_line_edit_merge_duplicates (fixture->session);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (fixture->lines)), ==, 2);
  g_assert_cmpfloat_with_epsilon (figures (fixture, 1)->mass_g, 130.0, 1e-9);
}

static void
test_moves_stop_at_the_ends (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 500.0);
  g_autofree char *brisket = add (fixture, "Brisket", 25.0, 300.0);
  g_autofree char *suet = add (fixture, "Suet", 90.0, 200.0);

  fm_line_edit_shift (fixture->session, chuck, -1);
  g_assert_cmpstr (figures (fixture, 0)->id, ==, chuck);
  fm_line_edit_shift (fixture->session, chuck, 1);
  g_assert_cmpstr (figures (fixture, 1)->id, ==, chuck);
  fm_line_edit_shift (fixture->session, suet, 1);
  g_assert_cmpstr (figures (fixture, 2)->id, ==, suet);
  fm_line_edit_move_to (fixture->session, suet, brisket);
  g_assert_cmpstr (figures (fixture, 0)->id, ==, suet);
  g_assert_cmpuint (figures (fixture, 2)->position, ==, 2);
}

static void
test_zero_mass_has_no_shares (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 0.0);
  g_autoptr (GError) error = NULL;

  g_assert_true (isnan (figures (fixture, 0)->share_pct));
  g_assert_true (isnan (figures (fixture, 0)->patty_g));
  g_assert_false (fm_line_edit_scale_to_batch (fixture->session, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

static void
test_a_price_belongs_to_its_line (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", 20.0, 600.0);
  g_autofree char *suet = add (fixture, "Suet", 90.0, 200.0);
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_line_edit_price (fixture->session, chuck, 1.0, &error));
  g_assert_true (fm_line_edit_price (fixture->session, chuck, 12.5, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (figures (fixture, 0)->ingredient->price_per_kg, ==, 12.5);
  g_assert_true (isnan (figures (fixture, 1)->ingredient->price_per_kg));
  g_assert_false (fm_line_edit_price (fixture->session, chuck, -1.0, &error));
  g_assert_nonnull (error);
  g_assert_cmpfloat (figures (fixture, 0)->ingredient->price_per_kg, ==, 12.5);
  fm_stored_document_undo (fm_session_get_draft (fixture->session));
  g_assert_true (isnan (figures (fixture, 0)->ingredient->price_per_kg));
}

static void
test_unknowns_in_words (Fixture *fixture, gconstpointer data)
{
  g_autofree char *chuck = add (fixture, "Chuck", NAN, 100.0);
  g_autoptr (FmFormulaLineItem) item = g_list_model_get_item (G_LIST_MODEL (fixture->lines), 0);
  g_autofree char *text = fm_formula_line_item_describe (item);

  g_assert_nonnull (strstr (text, "not known: fat, protein, water, energy"));
  g_assert_true (isnan (figures (fixture, 0)->fat_g));
}

static void
add_test (const char *name, void (*test) (Fixture *, gconstpointer))
{
  g_test_add (name, Fixture, NULL, set_up, test, tear_down);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_test ("/app/formula-lines/typing-keeps-items", test_typing_keeps_items);
  add_test ("/app/formula-lines/typing-is-one-undo", test_typing_is_one_undo);
  add_test ("/app/formula-lines/share-run-keeps-proportions", test_share_run_keeps_proportions);
  add_test ("/app/formula-lines/share-run-ends-with-other-edit",
            test_share_run_ends_with_other_edit);
  add_test ("/app/formula-lines/locked-lines-refuse", test_locked_lines_refuse);
  add_test ("/app/formula-lines/bad-mass-is-refused", test_bad_mass_is_refused);
  add_test ("/app/formula-lines/new-line-fills-the-batch", test_new_line_fills_the_batch);
  add_test ("/app/formula-lines/moves-stop-at-the-ends", test_moves_stop_at_the_ends);
  add_test ("/app/formula-lines/zero-mass-has-no-shares", test_zero_mass_has_no_shares);
  add_test ("/app/formula-lines/a-price-belongs-to-its-line", test_a_price_belongs_to_its_line);
  add_test ("/app/formula-lines/unknowns-in-words", test_unknowns_in_words);
  return g_test_run ();
}

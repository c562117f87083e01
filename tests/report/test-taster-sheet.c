/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-taster-sheet.c - the papers of a tasting: taster sheets tell codes only, the key sheet all
 */
#include "report/fm-taster-sheet.h"

#include <string.h>

#include "core/cooking/fm-caution.h"
#include "report/fm-batch-sheet-paint.h"

static const char *const samples[] = { "Lean draft", "Rib and fat", "Third try", "From outside" };
static const char *const tasters[] = { "Ana", "Bo", "Cy" };

static FmTasting *
new_tasting (void)
{
  FmTasting *tasting = fm_tasting_new ();
  g_autoptr (GError) error = NULL;

  g_free (tasting->title);
  tasting->title = g_strdup ("Panel of May");
  tasting->seed = 20250501;
  tasting->tasks = FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_JAR | FM_TASTING_PREFERENCE |
                   FM_TASTING_TRIANGLE | FM_TASTING_REMARKS;
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    fm_tasting_add_sample (tasting, i < 3 ? (gint64)i + 1 : 0, i < 3 ? 7 : 0, samples[i]);
  for (guint i = 0; i < G_N_ELEMENTS (tasters); i++)
    fm_tasting_add_taster (tasting, tasters[i]);
  g_ptr_array_add (tasting->attributes, g_strdup ("salt"));
  tasting->pair[0] = tasting->triangle[0] = 0;
  tasting->pair[1] = tasting->triangle[1] = 1;
  fm_tasting_arrange (tasting, 7, 1000, &error);
  g_assert_no_error (error);
  return tasting;
}

static void
assert_has (const char *text, const char *wanted)
{
  if (strstr (text, wanted) == NULL)
    g_error ("“%s” is not in:\n%s", wanted, text);
}

static void
assert_has_cup (const char *text, const FmTastingCup *cup)
{
  g_autofree char *code = g_strdup_printf ("%u", cup->code);

  assert_has (text, code);
}

/* The text of taster @index: from his title to the next. */
static char *
get_page (const FmBatchSheet *sheet, guint index)
{
  g_autofree char *text = fm_batch_sheet_text (sheet);
  g_auto (GStrv) pages = g_strsplit (text, "Tasting: Panel of May\n", -1);

  g_assert_cmpuint (g_strv_length (pages), ==, G_N_ELEMENTS (tasters) + 1);
  return g_strdup (pages[index + 1]);
}

static void
test_taster_sheets_tell_codes_only (void)
{
  g_autoptr (FmTasting) tasting = new_tasting ();
  g_autoptr (FmBatchSheet) sheet = fm_taster_sheets_new (tasting, "1 May 2025");
  g_autofree char *text = fm_batch_sheet_text (sheet);

  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    g_assert_null (strstr (text, samples[i]));
  g_assert_null (strstr (text, "ersion"));
  for (guint i = 0; i < G_N_ELEMENTS (tasters); i++) {
    g_autofree char *page = get_page (sheet, i);

    g_assert_true (g_str_has_prefix (page, tasters[i]));
    assert_has (page, "1 May 2025");
    assert_has (page, "1 dislike extremely, 2 dislike very much");
    assert_has (page, "3 just about right");
    assert_has (page, "salt");
    assert_has (page, "Remarks on each sample");
    assert_has (page, fm_caution_text ());
  }
}

static void
test_each_taster_gets_his_cups_in_order (void)
{
  g_autoptr (FmTasting) tasting = new_tasting ();
  g_autoptr (FmBatchSheet) sheet = fm_taster_sheets_new (tasting, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (tasters); i++) {
    g_autofree char *page = get_page (sheet, i);
    g_autoptr (GPtrArray) cups = fm_tasting_cups (tasting, i, FM_TASTING_ROUND_MAIN);
    const char *at = page;

    for (guint c = 0; c < cups->len; c++) {
      g_autofree char *code =
          g_strdup_printf ("%u", ((FmTastingCup *)g_ptr_array_index (cups, c))->code);

      at = strstr (at, code);
      g_assert_nonnull (at);
    }
  }
  for (guint i = 0; i < tasting->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (tasting->cups, FmTastingCup, i);
    g_autofree char *page = get_page (sheet, cup->taster);

    assert_has_cup (page, cup);
  }
}

static void
test_key_sheet_tells_all (void)
{
  g_autoptr (FmTasting) tasting = new_tasting ();
  g_autoptr (FmBatchSheet) sheet = fm_taster_key_sheet_new (tasting, NULL);
  g_autofree char *text = fm_batch_sheet_text (sheet);

  g_assert_true (sheet->secret);
  assert_has (text, "For the kitchen only");
  for (guint i = 0; i < G_N_ELEMENTS (tasters); i++)
    assert_has (text, tasters[i]);
  for (guint i = 0; i < tasting->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (tasting->cups, FmTastingCup, i);
    g_autofree char *line =
        g_strdup_printf ("%u. %u – %s", cup->position + 1, cup->code, samples[cup->sample]);

    assert_has (text, line);
  }
}

static void
test_one_page_for_each_taster (void)
{
  g_autoptr (FmTasting) tasting = new_tasting ();
  g_autoptr (FmBatchSheet) sheet = fm_taster_sheets_new (tasting, "1 May 2025");
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (FmSheetLayout) layout =
      fm_sheet_layout_new (sheet, cr, FM_A4_WIDTH_PT, FM_A4_HEIGHT_PT);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = fm_batch_sheet_to_pdf (sheet, &error);

  g_assert_cmpuint (fm_sheet_layout_n_pages (layout), ==, G_N_ELEMENTS (tasters));
  for (guint i = 0; i < layout->first->len; i++) {
    const FmSheetRow *row =
        g_ptr_array_index (sheet->rows, g_array_index (layout->first, guint, i));

    g_assert_cmpint (row->kind, ==, FM_SHEET_TITLE);
  }
  g_assert_no_error (error);
  g_assert_cmpmem (g_bytes_get_data (pdf, NULL), 4, "%PDF", 4);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/taster-sheet/codes-only", test_taster_sheets_tell_codes_only);
  g_test_add_func ("/taster-sheet/serving-order", test_each_taster_gets_his_cups_in_order);
  g_test_add_func ("/taster-sheet/key", test_key_sheet_tells_all);
  g_test_add_func ("/taster-sheet/pages", test_one_page_for_each_taster);
  return g_test_run ();
}

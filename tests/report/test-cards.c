/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-cards.c - the cook's card and the reader's card, on paper and as a page of the web */
#include "report/fm-cook-card.h"
#include "report/fm-reader-card.h"
#include "report/fm-specification.h"

#include <json-glib/json-glib.h>
#include <string.h>

#include "blends.h"
#include "report/fm-batch-sheet-paint.h"

static FmFormula *
new_blend (void)
{
  FmFormula *formula = three_line_blend ();

  formula->process->numbers[FM_PROCESS_SIDE_1] = 4.0;
  formula->process->numbers[FM_PROCESS_SIDE_2] = 3.0;
  formula->process->numbers[FM_PROCESS_REST] = 2.0;
  fm_process_set_words (formula->process, FM_PROCESS_STEPS, "Toast </script> the bun\nServe");
  return formula;
}

static void
input_init (FmBatchSheetInput *self)
{
  *self = (FmBatchSheetInput){
    .blend_name = "Pan <patty> & co",
    .version_name = "version 3",
    .date_text = "1/2/26",
    .currency = "",
    .plan = { .n_patties = 4,
              .patty_mass_g = 180.0,
              .salt_pct = NAN,
              .salt_price_per_kg = NAN,
              .cook_yield_pct = NAN },
    .salt_minutes_before = NAN,
    .plate_mm = NAN,
    .meat_temp_c = NAN,
  };
}

static void
assert_says (const char *text, const char *words)
{
  if (strstr (text, words) == NULL)
    g_error ("“%s” is not in: %s", words, text);
}

static void
assert_one_page (const FmBatchSheet *sheet)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, NULL);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (FmSheetLayout) layout =
      fm_sheet_layout_new (sheet, cr, FM_A4_WIDTH_PT, FM_A4_HEIGHT_PT);

  g_assert_cmpuint (fm_sheet_layout_n_pages (layout), ==, 1);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_cook (void)
{
  g_autoptr (FmFormula) formula = new_blend ();
  FmBatchSheetInput input;

  input_init (&input);
  g_autoptr (FmBatchSheet) card = fm_cook_card_new (formula, &input, NULL);
  g_autofree char *text = fm_batch_sheet_text (card);
  assert_says (text, "version 3");
  assert_says (text, "360.0\u00a0g Lean");
  assert_says (text, "Into the grinder: 720.0");
  assert_says (text, "Undercooked ground meat");
  assert_says (text, "Serve");
  g_assert_null (strstr (text, "Cost"));
  assert_one_page (card);
}

/* What the notebook does not have is a line to write on. */
static void
test_specification (void)
{
  g_autoptr (FmFormula) formula = new_blend ();
  FmBatchSheetInput input;

  input_init (&input);
  input.food.fat_pct = 32.0;
  formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ 30.0, 34.0 };
  g_autoptr (FmBatchSheet) sheet = fm_specification_new (formula, &input, NULL);
  g_autofree char *text = fm_batch_sheet_text (sheet);
  assert_says (text, "Specification: Pan <patty> & co, version 3");
  assert_says (text, "Fat that the brief asks for: 30.0\u00a0% to 34.0\u00a0%");
  assert_says (text, "Plates of the grinder, if it is delivered ground:");
  assert_says (text, "Cut and trim:");
  assert_says (text, "Supplier, date, signature:");
  assert_says (text, "Local rules");
  assert_one_page (sheet);
}

/* The pages of each title are counted for themselves. */
static void
test_foot (void)
{
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new_empty ("Test");
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, NULL);
  cairo_t *cr = cairo_create (surface);

  fm_batch_sheet_add (sheet, FM_SHEET_TITLE, g_strdup ("One, version 3"));
  for (guint i = 0; i < 90; i++)
    fm_batch_sheet_add (sheet, FM_SHEET_TEXT, g_strdup ("row"));
  fm_batch_sheet_add (sheet, FM_SHEET_TITLE, g_strdup ("Two"));
  g_autoptr (FmSheetLayout) layout =
      fm_sheet_layout_new (sheet, cr, FM_A4_WIDTH_PT, FM_A4_HEIGHT_PT);
  g_assert_cmpuint (fm_sheet_layout_n_pages (layout), ==, 3);
  g_autofree char *second = fm_sheet_layout_foot (layout, sheet, 1);
  g_autofree char *third = fm_sheet_layout_foot (layout, sheet, 2);
  g_assert_cmpstr (second, ==, "One, version 3 · page 2 of 2");
  g_assert_cmpstr (third, ==, "Two · page 1 of 1");
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_reader (void)
{
  g_autoptr (FmFormula) formula = new_blend ();
  FmBatchSheetInput input;

  input_init (&input);
  g_autoptr (FmBatchSheet) card = fm_reader_card_new (formula, &input, FALSE, NULL);
  g_autofree char *text = fm_batch_sheet_text (card);
  assert_says (text, "350 g Lean");                     /* 360 */
  assert_says (text, "4 patties of about 181.2 g raw"); /* 725 g of what was rounded */
  assert_says (text, "the targets of the brief stand");
  assert_says (text, "At the heat: 7");
  assert_says (text, "Undercooked ground meat");
  g_autoptr (FmBatchSheet) ounces = fm_reader_card_new (formula, &input, TRUE, NULL);
  g_autofree char *in_ounces = fm_batch_sheet_text (ounces);
  assert_says (in_ounces, "13 oz Lean");
  assert_one_page (card);
}

static JsonObject *
read_json (const char *page, JsonParser *parser)
{
  const char *start = strstr (page, "ld+json\">") + strlen ("ld+json\">");
  g_autoptr (GError) error = NULL;

  json_parser_load_from_data (parser, start, strstr (start, "</script>") - start, &error);
  g_assert_no_error (error);
  return json_node_get_object (json_parser_get_root (parser));
}

/* Property names as schema.org has them (vocabulary as typed in schema-dts 2.1.0), and none
 * besides; HowToStep, name, version, datePublished: from memory. */
static void
test_page (void)
{
  static const char *const allowed[] = {
    "@context",           "@type",       "name",     "version",
    "datePublished",      "recipeYield", "cookTime", "recipeIngredient",
    "recipeInstructions", "nutrition",   NULL
  };
  g_autoptr (FmFormula) formula = new_blend ();
  g_autoptr (JsonParser) parser = json_parser_new ();
  FmBatchSheetInput input;

  input_init (&input);
  g_autofree char *page = fm_reader_card_html (formula, &input, FALSE, "2026-02-01", NULL);
  JsonObject *recipe = read_json (page, parser);
  g_autoptr (GList) members = json_object_get_members (recipe);
  for (GList *l = members; l != NULL; l = l->next)
    g_assert_true (g_strv_contains (allowed, l->data));
  g_assert_cmpstr (json_object_get_string_member (recipe, "@type"), ==, "Recipe");
  g_assert_cmpstr (json_object_get_string_member (recipe, "cookTime"), ==, "PT7M");
  g_assert_cmpstr (json_object_get_string_member (recipe, "name"), ==, input.blend_name);
  JsonObject *nutrition = json_object_get_object_member (recipe, "nutrition");
  g_assert_cmpstr (json_object_get_string_member (nutrition, "fatContent"), ==, "59 g");
  g_assert_false (json_object_has_member (nutrition, "sodiumContent")); /* not known */
  JsonArray *steps = json_object_get_array_member (recipe, "recipeInstructions");
  JsonObject *last = json_array_get_object_element (steps, json_array_get_length (steps) - 1);
  g_assert_cmpstr (json_object_get_string_member (last, "@type"), ==, "HowToStep");
  assert_says (page, "<h1>Pan &lt;patty&gt; &amp; co</h1>");
  assert_says (page, "Toast &lt;/script&gt; the bun");
  assert_says (page, "Undercooked ground meat");
}

/* What the notebook says of itself stands on every paper and page of it. */
static void
test_notice (void)
{
  g_autoptr (FmFormula) formula = new_blend ();
  g_autoptr (JsonParser) parser = json_parser_new ();
  FmBatchSheetInput input;

  input_init (&input);
  input.notice = "All made up.";
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, NULL);
  g_autoptr (FmBatchSheet) cook = fm_cook_card_new (formula, &input, NULL);
  g_autoptr (FmBatchSheet) reader = fm_reader_card_new (formula, &input, FALSE, NULL);
  g_autofree char *page = fm_reader_card_html (formula, &input, FALSE, NULL, NULL);
  g_autoptr (FmBatchSheet) specification = fm_specification_new (formula, &input, NULL);
  const FmBatchSheet *const sheets[] = { sheet, cook, reader, specification };
  for (guint i = 0; i < G_N_ELEMENTS (sheets); i++) {
    g_autofree char *text = fm_batch_sheet_text (sheets[i]);
    g_assert_true (g_str_has_prefix (text, "All made up.\n"));
  }
  assert_says (page, "<p>All made up.</p>\n<h1>");
  g_assert_cmpstr (json_object_get_string_member (read_json (page, parser), "description"), ==,
                   "All made up.");
}

/* ISO 8601-1:2019, clause 5.5.2. */
static void
test_durations (void)
{
  static const struct {
    double minutes;
    const char *text;
  } cases[] = { { 15.0, "PT15M" }, { 90.0, "PT1H30M" }, { 120.0, "PT2H" },
                { 0.0, "PT0M" },   { NAN, NULL },       { -1.0, NULL } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *text = fm_duration_iso (cases[i].minutes);
    g_assert_cmpstr (text, ==, cases[i].text);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cards/cook", test_cook);
  g_test_add_func ("/cards/reader", test_reader);
  g_test_add_func ("/cards/foot", test_foot);
  g_test_add_func ("/cards/specification", test_specification);
  g_test_add_func ("/cards/page", test_page);
  g_test_add_func ("/cards/notice", test_notice);
  g_test_add_func ("/cards/durations", test_durations);
  return g_test_run ();
}

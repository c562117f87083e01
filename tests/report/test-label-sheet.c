/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-label-sheet.c - labels drawn into memory and into files, and the sheet around them */
#include "report/fm-label-sheet.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gstdio.h>
#include <pango/pangocairo.h>
#include <stdlib.h>
#include <string.h>

#include "blends.h"
#include "report/fm-batch-sheet-paint.h"

#define SCALE 4
/* Article 13(2) of Regulation (EU) No 1169/2011. */
#define MIN_X_HEIGHT_MM 1.2
#define MM_PER_POINT (25.4 / 72.0)

typedef struct {
  FmFormula *formula;
  FmAnalysis *analysis;
  FmLabelChoice *choice;
  FmLabelOrigin origin;
  FmLabel *label;
} Made;

static void
made_init (Made *self, FmLabelSetId set, gboolean is_known)
{
  FmIngredient *meat;

  self->formula = fm_formula_new ();
  add_line (self->formula, "Chuck", 20.0, 1000.0);
  meat = fm_formula_line (self->formula, 0)->ingredient;
  meat->species = FM_SPECIES_BEEF;
  meat->allergens_known = TRUE;
  for (int i = 0; is_known && i < FM_N_NUTRIENTS; i++)
    if (i != FM_NUTRIENT_FAT)
      meat->composition.per_100g[i] = 3.0;
  self->analysis = fm_analysis_new (self->formula);
  self->choice = fm_label_choice_new (112.0);
  self->choice->input.set = set;
  self->choice->input.pack_g = 454.0;
  self->choice->stated.per_100g[FM_LABEL_ITEM_TRANS_FAT] = 1.0;
  self->choice->stated.per_100g[FM_LABEL_ITEM_ADDED_SUGARS] = 0.0;
  self->origin = (FmLabelOrigin){ .formula = self->formula,
                                  .analysis = self->analysis,
                                  .blend_name = "Pan patty",
                                  .version_name = "version 3",
                                  .date_text = "1/2/26",
                                  .serving_words = "1 patty" };
  self->label = fm_label_new (&self->origin, self->choice);
}

static void
made_clear (Made *self)
{
  g_clear_pointer (&self->label, fm_label_free);
  fm_label_choice_free (self->choice);
  fm_analysis_free (self->analysis);
  fm_formula_free (self->formula);
}

static cairo_surface_t *
draw (const FmLabelPicture *picture, int *width, int *height)
{
  double width_pt, height_pt;
  cairo_surface_t *surface;
  cairo_t *cr;

  fm_label_picture_size (picture, &width_pt, &height_pt);
  *width = (int)(width_pt * SCALE);
  *height = (int)(height_pt * SCALE);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, *width, *height + 10 * SCALE);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  cairo_scale (cr, SCALE, SCALE);
  fm_label_picture_paint (picture, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static gboolean
is_ink (cairo_surface_t *surface, int x, int y)
{
  const guchar *data = cairo_image_surface_get_data (surface);

  return data[y * cairo_image_surface_get_stride (surface) + 4 * x + 1] < 128;
}

/* How much of a row of pixels is black, 0 to 1. */
static double
ink_of_row (cairo_surface_t *surface, int width, int y)
{
  int n = 0;

  for (int x = 0; x < width; x++)
    n += is_ink (surface, x, y);
  return (double)n / width;
}

/* The longest run of pixel rows that are black nearly across the panel, in points: the thick bar.
 */
static double
thickest_bar_pt (cairo_surface_t *surface, int width, int height)
{
  int longest = 0, run = 0;

  for (int y = 0; y < height; y++) {
    run = ink_of_row (surface, width, y) > 0.9 ? run + 1 : 0;
    longest = MAX (longest, run);
  }
  return (double)longest / SCALE;
}

static void
test_pictures (void)
{
  for (int set = 0; set < FM_N_LABEL_SETS; set++) {
    int width, height;
    Made made;

    made_init (&made, (FmLabelSetId)set, TRUE);
    const FmLabelPicture picture = fm_label_picture (made.label);
    cairo_surface_t *surface = draw (&picture, &width, &height);
    /* Framed: a line at the left edge, nothing below the picture. */
    g_assert_true (is_ink (surface, 1, height / 3));
    g_assert_true (is_ink (surface, width - 2, height / 3));
    for (int y = height; y < height + 10 * SCALE; y++)
      g_assert_cmpfloat (ink_of_row (surface, width, y), ==, 0.0);
    /* 21 CFR 101.9(d)(11): bars of 7 points. */
    if (set != FM_LABEL_EU)
      assert_near (thickest_bar_pt (surface, width, height), 7.0, 0.5);
    cairo_surface_destroy (surface);
    made_clear (&made);
  }
}

static void
assert_says (const char *text, const char *words)
{
  if (strstr (text, words) == NULL)
    g_error ("“%s” is not in: %s", words, text);
}

static void
test_words (void)
{
  static const struct {
    FmLabelSetId set;
    const char *words[7];
  } cases[] = {
    { FM_LABEL_US_RETAIL,
      { "Nutrition Facts", "about 4 servings per container", "Serving size 1 patty (112g)",
        "Total Fat 22g 29%", "Trans Fat 1g", "Includes 0g Added Sugars 0%",
        "Vitamin D 3.4mcg 15%" } },
    { FM_LABEL_US_MEAT,
      { "Nutrition Facts", "Servings Per Container about 4", "Serving Size 1 patty (112g)",
        "Calories from Fat 200", "Total Fat 22g 34%", "Vitamin C 6%", "Percent Daily Values" } },
    { FM_LABEL_EU,
      { "Nutrition declaration", "per 100 g", "per 1 patty (112 g)", "Fat 20 g 22 g",
        "of which saturates 3.0 g 3.4 g", "Salt <0.01 g <0.01 g", "kcal" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    Made made;

    made_init (&made, cases[i].set, TRUE);
    const FmLabelPicture picture = fm_label_picture (made.label);
    g_autofree char *text = fm_label_picture_text (&picture);
    for (guint j = 0; j < G_N_ELEMENTS (cases[i].words); j++)
      assert_says (text, cases[i].words[j]);
    made_clear (&made);
  }
}

/* Type of 8 points, as the rows of the declaration have it. */
static void
test_x_height (void)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, NULL);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (PangoLayout) layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_from_string ("Sans");
  PangoRectangle ink;

  pango_font_description_set_absolute_size (font, 8.0 * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, "x", -1);
  pango_layout_get_extents (layout, &ink, NULL);
  g_assert_cmpfloat ((double)ink.height / PANGO_SCALE * MM_PER_POINT, >=, MIN_X_HEIGHT_MM);
  pango_font_description_free (font);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static double
svg_width_pt (GBytes *svg)
{
  g_autofree char *text = g_strndup (g_bytes_get_data (svg, NULL), g_bytes_get_size (svg));
  const char *at = strstr (text, "width=\"");

  g_assert_nonnull (at);
  return g_ascii_strtod (at + strlen ("width=\""), NULL);
}

static void
test_files (void)
{
  g_autoptr (GError) error = NULL;
  double width_pt, height_pt;
  Made made;

  made_init (&made, FM_LABEL_US_RETAIL, TRUE);
  const FmLabelPicture picture = fm_label_picture (made.label);
  fm_label_picture_size (&picture, &width_pt, &height_pt);
  g_autoptr (GBytes) svg = fm_label_picture_to_file (&picture, FM_LABEL_FILE_SVG, &error);
  g_assert_no_error (error);
  assert_near (svg_width_pt (svg), width_pt, 1e-6);
  g_autoptr (GBytes) pdf = fm_label_picture_to_file (&picture, FM_LABEL_FILE_PDF, &error);
  g_assert_no_error (error);
  g_assert_cmpint (memcmp (g_bytes_get_data (pdf, NULL), "%PDF-", 5), ==, 0);
  g_autoptr (GBytes) png = fm_label_picture_to_file (&picture, FM_LABEL_FILE_PNG, &error);
  g_assert_no_error (error);
  g_autoptr (GInputStream) stream = g_memory_input_stream_new_from_bytes (png);
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new_from_stream (stream, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (abs (gdk_pixbuf_get_width (pixbuf) - (int)(width_pt / 72.0 * 300.0)), <=, 1);
  g_assert_cmpstr (gdk_pixbuf_get_option (pixbuf, "x-dpi"), ==, "300");
  made_clear (&made);
}

/* Whatever is made of a label names blend and version and says who must check it. */
static void
test_sheet (void)
{
  Made made;

  made_init (&made, FM_LABEL_EU, TRUE);
  assert_says (made.label->caption, "Pan patty, version 3. 1/2/26.");
  assert_says (made.label->caption, "licensed professional or the authority must check");
  g_autoptr (FmBatchSheet) sheet =
      fm_label_sheet_new (g_steal_pointer (&made.label), &made.origin, made.choice);
  g_autofree char *text = fm_batch_sheet_text (sheet);
  assert_says (text, "Label: Pan patty, version 3");
  assert_says (text, "licensed professional or the authority must check");
  assert_says (text, "beef (100%)");
  assert_says (text, "“high protein”: NOT met");
  assert_says (text, "Regulation (EU) No 1169/2011");
  g_autoptr (GBytes) pdf = fm_batch_sheet_to_pdf (sheet, NULL);
  g_assert_nonnull (pdf);
  made_clear (&made);
}

static void
test_refused (void)
{
  Made made;

  made_init (&made, FM_LABEL_US_MEAT, FALSE);
  g_assert_null (made.label->panel);
  g_autoptr (FmBatchSheet) sheet =
      fm_label_sheet_new (g_steal_pointer (&made.label), &made.origin, made.choice);
  g_autofree char *text = fm_batch_sheet_text (sheet);
  assert_says (text, "Sodium: not known for Chuck");
  assert_says (text, "“lean”: NOT met");
  assert_says (text, "Beef");
  g_autoptr (GBytes) pdf = fm_batch_sheet_to_pdf (sheet, NULL);
  g_assert_nonnull (pdf);
  made_clear (&made);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/label-sheet/pictures", test_pictures);
  g_test_add_func ("/label-sheet/words", test_words);
  g_test_add_func ("/label-sheet/x-height", test_x_height);
  g_test_add_func ("/label-sheet/files", test_files);
  g_test_add_func ("/label-sheet/sheet", test_sheet);
  g_test_add_func ("/label-sheet/refused", test_refused);
  return g_test_run ();
}

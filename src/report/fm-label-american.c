/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-american.c - the two American panels
 *
 * Sizes by 21 CFR 101.9(d)(1) and (d)(11), from memory: rows 8 points or more, calories 16 and 22,
 * the serving size 10, nothing below 6; bars of 7 and 3 points.
 */
#include "report/fm-label-paint-private.h"

#include <math.h>

#define ROW_PT 8.0
#define SMALL_PT 6.0
#define SERVING_PT 10.0
#define CALORIES_PT 16.0
#define CALORIES_FIGURE_PT 22.0
#define OLD_CALORIES_PT 9.0
#define THICK_BAR_PT 7.0
#define MIDDLE_BAR_PT 3.0
#define INDENT_PT 9.0

#define NOTE_2016                                                                                  \
  "* The % Daily Value (DV) tells you how much a nutrient in a serving of food contributes to a "  \
  "daily diet. 2,000 calories a day is used for general nutrition advice."
#define NOTE_BEFORE "* Percent Daily Values are based on a 2,000 calorie diet."

static gboolean
is_of_2016 (const FmLabelPicture *picture)
{
  return picture->panel->input.set == FM_LABEL_US_RETAIL;
}

/* Whole grams, as the serving stands on the pack. */
static char *
serving_text (const FmLabelPicture *picture)
{
  g_autofree char *words = g_markup_escape_text (picture->serving_words, -1);

  return g_strdup_printf ("%s (%.0fg)", words, round (picture->panel->input.serving_g));
}

/* "about 4" */
static char *
servings_text (const FmLabelInput *input)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  gboolean is_about;

  g_ascii_formatd (number, sizeof number, "%g",
                   fm_label_servings (input->pack_g, input->serving_g, &is_about));
  return g_strdup_printf ("%s%s", is_about ? "about " : "", number);
}

static void
draw_serving_of_2016 (FmLabelPen *pen, const FmLabelPicture *picture)
{
  g_autofree char *serving = serving_text (picture);
  g_autofree char *bold = g_strdup_printf ("<b>%s</b>", serving);

  if (!isnan (picture->panel->input.pack_g)) {
    g_autofree char *servings = servings_text (&picture->panel->input);
    g_autofree char *row = g_strdup_printf ("%s servings per container", servings);
    fm_label_pen_row (pen, SERVING_PT, 0.0, row, NULL);
  }
  fm_label_pen_row (pen, SERVING_PT, 0.0, "<b>Serving size</b>", bold);
}

static void
draw_serving_before (FmLabelPen *pen, const FmLabelPicture *picture)
{
  g_autofree char *serving = serving_text (picture);
  g_autofree char *size = g_strdup_printf ("Serving Size %s", serving);

  fm_label_pen_row (pen, ROW_PT, 0.0, size, NULL);
  if (!isnan (picture->panel->input.pack_g)) {
    g_autofree char *servings = servings_text (&picture->panel->input);
    g_autofree char *row = g_strdup_printf ("Servings Per Container %s", servings);
    fm_label_pen_row (pen, ROW_PT, 0.0, row, NULL);
  }
}

static const char *
figure_of (const FmLabelPicture *picture, FmLabelItem item)
{
  return fm_label_panel_line (picture->panel, item)->figure.text;
}

static void
draw_calories (FmLabelPen *pen, const FmLabelPicture *picture)
{
  const char *figure = figure_of (picture, FM_LABEL_ITEM_CALORIES);
  g_autofree char *left = NULL;
  g_autofree char *right = NULL;

  if (is_of_2016 (picture)) {
    left = g_strdup_printf ("<span size='%d%%'><b>Calories</b></span>",
                            (int)(100.0 * CALORIES_PT / CALORIES_FIGURE_PT));
    right = g_strdup_printf ("<b>%s</b>", figure);
    fm_label_pen_row (pen, CALORIES_FIGURE_PT, 0.0, left, right);
    return;
  }
  left = g_strdup_printf ("<b>Calories</b> %s", figure);
  right = g_strdup_printf ("Calories from Fat %s",
                           figure_of (picture, FM_LABEL_ITEM_CALORIES_FROM_FAT));
  fm_label_pen_row (pen, OLD_CALORIES_PT, 0.0, left, right);
}

static char *
amount_text (const FmLabelLine *line)
{
  g_autofree char *name = g_markup_escape_text (line->row->name, -1);

  if (line->row->shows == FM_LABEL_SHOWS_SHARE)
    return g_steal_pointer (&name);
  if (line->row->item == FM_LABEL_ITEM_ADDED_SUGARS)
    return g_strdup_printf ("Includes %s%s Added Sugars", line->figure.text, line->row->unit);
  if (line->row->indent == 0 && line->row->item < FM_LABEL_ITEM_VITAMIN_A_IU)
    return g_strdup_printf ("<b>%s</b> %s%s", name, line->figure.text, line->row->unit);
  return g_strdup_printf ("%s %s%s", name, line->figure.text, line->row->unit);
}

static void
draw_line (FmLabelPen *pen, const FmLabelLine *line)
{
  const gboolean is_vitamin = line->row->item >= FM_LABEL_ITEM_VITAMIN_A_IU;
  g_autofree char *left = amount_text (line);
  g_autofree char *right = NULL;

  if (line->row->shows != FM_LABEL_SHOWS_AMOUNT)
    right = g_strdup_printf (is_vitamin ? "%s%%" : "<b>%s%%</b>", line->share.text);
  fm_label_pen_row (pen, ROW_PT, INDENT_PT * line->row->indent, left, right);
}

static gboolean
is_calories (const FmLabelLine *line)
{
  return line->row->item == FM_LABEL_ITEM_CALORIES ||
         line->row->item == FM_LABEL_ITEM_CALORIES_FROM_FAT;
}

static void
draw_lines (FmLabelPen *pen, const FmLabelPanel *panel)
{
  gboolean is_after_protein = FALSE;

  for (guint i = 0; i < panel->lines->len; i++) {
    const FmLabelLine *line = &g_array_index (panel->lines, FmLabelLine, i);

    if (is_calories (line))
      continue;
    fm_label_pen_bar (pen, is_after_protein ? THICK_BAR_PT : FM_LABEL_HAIRLINE_PT);
    draw_line (pen, line);
    is_after_protein = line->row->item == FM_LABEL_ITEM_PROTEIN;
  }
}

void
fm_label_draw_american (FmLabelPen *pen, const FmLabelPicture *picture)
{
  const gboolean is_new = is_of_2016 (picture);

  fm_label_pen_title (pen, "Nutrition Facts");
  if (is_new) {
    fm_label_pen_bar (pen, FM_LABEL_HAIRLINE_PT);
    draw_serving_of_2016 (pen, picture);
  } else {
    draw_serving_before (pen, picture);
  }
  fm_label_pen_bar (pen, THICK_BAR_PT);
  fm_label_pen_row (pen, ROW_PT, 0.0,
                    is_new ? "<b>Amount per serving</b>" : "<b>Amount Per Serving</b>", NULL);
  draw_calories (pen, picture);
  fm_label_pen_bar (pen, MIDDLE_BAR_PT);
  fm_label_pen_row (pen, ROW_PT, 0.0, NULL, "<b>% Daily Value*</b>");
  draw_lines (pen, picture->panel);
  fm_label_pen_bar (pen, is_new ? MIDDLE_BAR_PT : FM_LABEL_HAIRLINE_PT);
  fm_label_pen_row (pen, SMALL_PT, 0.0, is_new ? NOTE_2016 : NOTE_BEFORE, NULL);
}

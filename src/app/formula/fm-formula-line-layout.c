/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-line-layout.c - one line of a table that folds when the page is narrow */
#include "app/formula/fm-formula-line-layout.h"

#define SPACING 8
/* Least widths in px: room for a cut in two or three lines, and for six digits, in the usual font.
 */
#define LEAD_WIDTH 148
#define ENTRIES_WIDTH 176
#define FIGURES_WIDTH 186
#define TAIL_WIDTH 72

enum {
  LEAD,
  ENTRIES,
  FIGURES,
  SUMMARY,
  TAIL,
  MESSAGE,
  N_PARTS,
};

struct _FmFormulaLineLayout {
  GtkLayoutManager parent_instance;

  GtkListBox *like; /* (nullable): this is the heading of that list, which outlives it */
};

G_DEFINE_FINAL_TYPE (FmFormulaLineLayout, fm_formula_line_layout, GTK_TYPE_LAYOUT_MANAGER)

enum {
  PROP_0,
  PROP_LIKE,
};

static void
collect_parts (GtkWidget *widget, GtkWidget *parts[N_PARTS])
{
  GtkWidget *child = gtk_widget_get_first_child (widget);

  for (guint i = 0; i < N_PARTS; i++) {
    parts[i] = child != NULL && gtk_widget_get_visible (child) ? child : NULL;
    if (child != NULL)
      child = gtk_widget_get_next_sibling (child);
  }
}

static int
part_width (GtkWidget *part, int least)
{
  int minimum = 0;

  if (part != NULL)
    gtk_widget_measure (part, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  return MAX (minimum, least);
}

static int
part_height (GtkWidget *part, int width)
{
  int minimum = 0;
  int natural = 0;

  if (part == NULL)
    return 0;
  gtk_widget_measure (part, GTK_ORIENTATION_VERTICAL, width, &minimum, &natural, NULL, NULL);
  return natural;
}

/* Widths of the parts of a table; the lead takes what is left. */
typedef struct {
  int entries;
  int figures;
  int tail;
  int whole; /* the least width of a table */
} Widths;

/* A heading has the widths of the rows below, which grow with the font. */
static Widths
measure_widths (FmFormulaLineLayout *self, GtkWidget *parts[N_PARTS])
{
  GtkListBoxRow *row = self->like != NULL ? gtk_list_box_get_row_at_index (self->like, 0) : NULL;
  GtkWidget *model[N_PARTS];
  Widths widths;

  if (row != NULL)
    collect_parts (gtk_list_box_row_get_child (row), model);
  else
    memcpy (model, parts, sizeof model);
  widths.entries = part_width (model[ENTRIES], ENTRIES_WIDTH);
  widths.figures = part_width (model[FIGURES], FIGURES_WIDTH);
  widths.tail = part_width (model[TAIL], TAIL_WIDTH);
  widths.whole = LEAD_WIDTH + widths.entries + widths.figures + widths.tail + 3 * SPACING;
  return widths;
}

static int
folded_width (GtkWidget *parts[N_PARTS])
{
  const int first = part_width (parts[LEAD], 0) + SPACING + part_width (parts[TAIL], 0);
  const int second =
      part_width (parts[ENTRIES], ENTRIES_WIDTH) + SPACING + part_width (parts[SUMMARY], 0);

  return MAX (first, second);
}

static int
lead_width (const Widths *widths, int width)
{
  return width - widths->entries - widths->figures - widths->tail - 3 * SPACING;
}

static int
wide_height (GtkWidget *parts[N_PARTS], const Widths *widths, int width)
{
  int height = part_height (parts[LEAD], lead_width (widths, width));

  height = MAX (height, part_height (parts[ENTRIES], widths->entries));
  height = MAX (height, part_height (parts[FIGURES], widths->figures));
  return MAX (height, part_height (parts[TAIL], widths->tail));
}

static int
first_line_height (GtkWidget *parts[N_PARTS], int width)
{
  const int tail = part_width (parts[TAIL], 0);
  const int lead = MAX (width - tail - SPACING, 1);

  return MAX (part_height (parts[LEAD], lead), part_height (parts[TAIL], tail));
}

static int
second_line_height (GtkWidget *parts[N_PARTS], int width)
{
  const int entries = part_width (parts[ENTRIES], ENTRIES_WIDTH);
  const int summary = MAX (width - entries - SPACING, 1);

  return MAX (part_height (parts[ENTRIES], entries), part_height (parts[SUMMARY], summary));
}

static int
folded_height (GtkWidget *parts[N_PARTS], int width)
{
  return first_line_height (parts, width) + SPACING / 2 + second_line_height (parts, width);
}

static GtkSizeRequestMode
fm_formula_line_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
fm_formula_line_layout_measure (GtkLayoutManager *manager,
                                GtkWidget *widget,
                                GtkOrientation orientation,
                                int for_size,
                                int *minimum,
                                int *natural,
                                int *minimum_baseline,
                                int *natural_baseline)
{
  FmFormulaLineLayout *self = FM_FORMULA_LINE_LAYOUT (manager);
  GtkWidget *parts[N_PARTS];
  Widths widths;
  int height = 0;

  collect_parts (widget, parts);
  widths = measure_widths (self, parts);
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = self->like != NULL ? 0 : folded_width (parts);
    *natural = MAX (*minimum, widths.whole);
    return;
  }
  if (for_size < 0)
    for_size = widths.whole;
  if (for_size >= widths.whole)
    height = wide_height (parts, &widths, for_size);
  else if (self->like == NULL)
    height = folded_height (parts, for_size);
  if (parts[MESSAGE] != NULL)
    height += SPACING / 2 + part_height (parts[MESSAGE], for_size);
  *minimum = *natural = height;
}

static void
place (GtkWidget *part, int x, int y, int width, int height)
{
  if (part == NULL)
    return;
  gtk_widget_set_child_visible (part, width > 0 && height > 0);
  if (width > 0 && height > 0)
    gtk_widget_size_allocate (part, &(GtkAllocation){ x, y, width, height }, -1);
}

static void
hide (GtkWidget *part)
{
  if (part != NULL)
    gtk_widget_set_child_visible (part, FALSE);
}

/* Widgets in right-to-left locales read from the other side: mirror the x of a part. */
static int
mirrored (GtkWidget *widget, int x, int part, int width)
{
  return gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL ? width - x - part : x;
}

static int
place_wide (GtkWidget *widget, GtkWidget *parts[N_PARTS], const Widths *widths, int width)
{
  const int height = wide_height (parts, widths, width);
  const int across[N_PARTS] = {
    [LEAD] = lead_width (widths, width),
    [ENTRIES] = widths->entries,
    [FIGURES] = widths->figures,
    [TAIL] = widths->tail,
  };
  int x = 0;

  for (guint i = 0; i < MESSAGE; i++) {
    if (i == SUMMARY)
      continue;
    place (parts[i], mirrored (widget, x, across[i], width), 0, across[i], height);
    x += across[i] + SPACING;
  }
  hide (parts[SUMMARY]);
  return height;
}

static int
place_folded (GtkWidget *widget, GtkWidget *parts[N_PARTS], int width)
{
  const int tail = part_width (parts[TAIL], 0);
  const int lead = MAX (width - tail - SPACING, 1);
  const int entries = part_width (parts[ENTRIES], ENTRIES_WIDTH);
  const int summary = MAX (width - entries - SPACING, 1);
  const int first = first_line_height (parts, width);
  const int second = second_line_height (parts, width);
  const int y = first + SPACING / 2;

  place (parts[LEAD], mirrored (widget, 0, lead, width), 0, lead, first);
  place (parts[TAIL], mirrored (widget, width - tail, tail, width), 0, tail, first);
  place (parts[ENTRIES], mirrored (widget, 0, entries, width), y, entries, second);
  place (parts[SUMMARY], mirrored (widget, width - summary, summary, width), y, summary, second);
  hide (parts[FIGURES]);
  return y + second;
}

static void
fm_formula_line_layout_allocate (
    GtkLayoutManager *manager, GtkWidget *widget, int width, int height, int baseline)
{
  FmFormulaLineLayout *self = FM_FORMULA_LINE_LAYOUT (manager);
  GtkWidget *parts[N_PARTS];
  Widths widths;
  int used = 0;

  collect_parts (widget, parts);
  widths = measure_widths (self, parts);
  if (width >= widths.whole) {
    used = place_wide (widget, parts, &widths, width);
  } else if (self->like == NULL) {
    used = place_folded (widget, parts, width);
  } else {
    for (guint i = 0; i < N_PARTS; i++)
      hide (parts[i]);
  }
  if (parts[MESSAGE] != NULL)
    place (parts[MESSAGE], 0, used + SPACING / 2, width, part_height (parts[MESSAGE], width));
}

static void
fm_formula_line_layout_set_property (GObject *object,
                                     guint id,
                                     const GValue *value,
                                     GParamSpec *pspec)
{
  FmFormulaLineLayout *self = FM_FORMULA_LINE_LAYOUT (object);

  if (id == PROP_LIKE) {
    self->like = g_value_get_object (value);
    gtk_layout_manager_layout_changed (GTK_LAYOUT_MANAGER (self));
  } else {
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
fm_formula_line_layout_class_init (FmFormulaLineLayoutClass *klass)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (klass);
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->set_property = fm_formula_line_layout_set_property;
  manager_class->get_request_mode = fm_formula_line_layout_get_request_mode;
  manager_class->measure = fm_formula_line_layout_measure;
  manager_class->allocate = fm_formula_line_layout_allocate;
  g_object_class_install_property (object_class, PROP_LIKE,
                                   g_param_spec_object ("like", NULL, NULL, GTK_TYPE_LIST_BOX,
                                                        G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS));
}

static void
fm_formula_line_layout_init (FmFormulaLineLayout *self)
{
}

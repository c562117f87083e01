/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart.h - the parent of every chart
 *
 * It owns the colours of the light, the dark and the high contrast, the accessible name and
 * description, the way from mark to mark (arrow keys, Home, End, a click), the tooltip of the mark
 * under the pointer, the table of the same data, and the menu (a button, a right click, Menu or
 * Shift+F10) that shows that table and saves the picture. A chart draws on a canvas and says in a
 * table what it draws; nothing is told by colour alone.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/charts/fm-chart-canvas.h"
#include "app/charts/fm-chart-table.h"

G_BEGIN_DECLS

#define FM_TYPE_CHART (fm_chart_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmChart, fm_chart, FM, CHART, GtkWidget)

struct _FmChartClass {
  GtkWidgetClass parent_class;

  /* Draws all of it; called only with something to say. */
  void (*draw) (FmChart *self, FmChartCanvas *canvas);
  /* Pixels that it needs and would like. */
  void (*get_size) (FmChart *self, GtkOrientation orientation, int *minimum, int *natural);
  /* The rest may be NULL. */
  /* What lies over the drawing in the window, and is not saved with it. */
  void (*draw_over) (FmChart *self, FmChartCanvas *canvas);
  /* Arrow keys: one step right and down, or ten; without, they go from mark to mark. */
  void (*move) (FmChart *self, int right, int down, gboolean far);
  /* What stands at a place of the canvas without a mark; NULL = nothing. (transfer full) */
  char *(*text_at) (FmChart *self, double x, double y);
  /* A click where no mark is. */
  void (*point_at) (FmChart *self, double x, double y);
  /* Enter, or another click on the mark that is picked. */
  void (*activate) (FmChart *self, guint row);
  /* Where the figures come from, as text; @figure: what they are. (transfer full) (nullable) */
  char *(*derive) (FmChart *self, const char **figure);
  /* The menu's button lies over the picture, which leaves its upper end free. */
  gboolean button_over;
};

/**
 * fm_chart_say:
 * @title: what is drawn, with its unit
 * @description: (nullable): all of it in words; the sentences of @table without
 * @table: (transfer full) (nullable): one row for each mark; NULL = nothing to draw
 *
 * To be called by a chart whenever its data changed; where its size did, it asks for a resize too.
 */
void fm_chart_say (FmChart *self, const char *title, const char *description, FmChartTable *table);
/** Goes to a row of the table; -1 = to none. Its sentence is the property "picked". */
void fm_chart_pick (FmChart *self, int row);
/** -1 = none. */
int fm_chart_get_picked (FmChart *self);
/** Picks no row but says @sentence of what is drawn. (transfer full) */
void fm_chart_tell (FmChart *self, char *sentence);
/**
 * fm_chart_set_subject:
 * @subject: (nullable): the blend and version, the tasting ... that it is of; without, what the
 * window shows
 *
 * It stands on a saved picture and in the name of its file.
 */
void fm_chart_set_subject (FmChart *self, const char *subject);
/** What was set. (nullable) */
const char *fm_chart_get_subject (FmChart *self);
/** The same for all charts in @widget. */
void fm_chart_set_subject_in (GtkWidget *widget, const char *subject);
/** What was set, else what the window shows. (transfer full) (nullable) */
char *fm_chart_dup_subject (FmChart *self);
/** The words beside it that say what its marks mean; on a saved picture too. (nullable) */
void fm_chart_set_legend (FmChart *self, const char *legend);
const char *fm_chart_get_legend (FmChart *self);
const char *fm_chart_get_title (FmChart *self);
/** (nullable) (transfer none) */
const FmChartTable *fm_chart_get_table (FmChart *self);
/** Of its canvas, as it stands in the window. */
void fm_chart_get_canvas_size (FmChart *self, double *width, double *height);
/** Draws it as it stands, without the mark picked. */
void fm_chart_draw (FmChart *self, FmChartCanvas *canvas);

G_END_DECLS

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart.h - the parent of every chart
 *
 * It owns the colours of the light, the dark and the high contrast, the accessible name and
 * description, the way from mark to mark (arrow keys, Home, End, a click), the tooltip of the mark
 * under the pointer, and the table of the same data. A chart draws on a canvas and says in a table
 * what it draws; nothing is told by colour alone.
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
/** Draws it as it stands, without the mark picked. */
void fm_chart_draw (FmChart *self, FmChartCanvas *canvas);

G_END_DECLS

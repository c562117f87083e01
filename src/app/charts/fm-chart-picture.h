/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-picture.h - a chart as a file: its picture with the words that belong to it
 *
 * Always on a light ground, since it goes on paper and into texts. Needs no window.
 */
#pragma once

#include "app/charts/fm-chart-canvas.h"

G_BEGIN_DECLS

typedef enum {
  FM_CHART_SVG,
  FM_CHART_PDF,
  FM_CHART_PNG,
} FmChartFormat;

#define FM_CHART_N_FORMATS (FM_CHART_PNG + 1)

typedef struct {
  const char *title;   /* above */
  const char *legend;  /* (nullable): below */
  const char *subject; /* (nullable): what it is of, last */
  double width;        /* of the chart alone, in pixels */
  double height;
  PangoContext *pango; /* (nullable): as fm_chart_canvas_init() */
  void (*draw) (gpointer data, FmChartCanvas *canvas);
  gpointer data;
} FmChartPicture;

/** "svg", "pdf", "png". */
const char *fm_chart_format_ending (FmChartFormat format);
/** By the ending of @name; FALSE when it is none of them. */
gboolean fm_chart_format_of_name (const char *name, FmChartFormat *format);
/** "Pan patty, version 7 - Rank sums.svg": what a file may be called. (transfer full) */
char *fm_chart_picture_name (const char *title, const char *subject, FmChartFormat format);
/** What goes into the file; NULL with @error set when it cannot be made. (transfer full) */
GBytes *fm_chart_picture_make (const FmChartPicture *self, FmChartFormat format, GError **error);

G_END_DECLS

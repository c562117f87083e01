/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-paint-private.h - the pen that draws a panel, shared by the layouts of the rule sets */
#pragma once

#include "report/fm-label-paint.h"

G_BEGIN_DECLS

/** Where the next row goes. Without @cr rows are gathered in @text only. */
typedef struct {
  cairo_t *cr;   /* (nullable) */
  GString *text; /* (nullable) */
  double width_pt;
  double y_pt;
} FmLabelPen;

#define FM_LABEL_HAIRLINE_PT 0.25

/** A line across the panel. */
void fm_label_pen_bar (FmLabelPen *self, double thickness_pt);
/** @left and @right on one base line, Pango markup; either may be NULL. @left wraps. */
void fm_label_pen_row (
    FmLabelPen *self, double size_pt, double indent_pt, const char *left, const char *right);
/** Three columns, the last two at the right. */
void fm_label_pen_columns (
    FmLabelPen *self, double size_pt, const char *left, const char *middle, const char *right);
/** One line of bold type as wide as the panel. */
void fm_label_pen_title (FmLabelPen *self, const char *text);

void fm_label_draw_american (FmLabelPen *pen, const FmLabelPicture *picture);
void fm_label_draw_european (FmLabelPen *pen, const FmLabelPicture *picture);

G_END_DECLS

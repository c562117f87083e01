/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-scale.h - where marks of a chart go, as plain numbers */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** An axis with ticks at min, min + step ... max. */
typedef struct {
  double min;
  double max;
  double step;
  int decimals; /* places that tell the ticks apart */
  guint n_ticks;
} FmChartScale;

/**
 * Chooses a step of 1, 2 or 5 times a power of ten, so that at most @max_ticks (>= 3) ticks cover
 * zero and all finite @values: the length of a bar then is the value. With no finite value, or
 * only zeros, the axis runs from 0 to 1.
 */
void fm_chart_scale_init (FmChartScale *self, const double *values, guint n, guint max_ticks);
/** The same for marks that are no lengths: the axis covers @low to @high, with or without zero. */
void fm_chart_scale_init_between (FmChartScale *self, double low, double high, guint max_ticks);
/** The axis runs from @low to @high and no further, where @n_parts equal steps are of interest:
 * as many ticks as divide them evenly, at most @max_ticks (>= 3) and two at the least. */
void fm_chart_scale_init_ends (
    FmChartScale *self, double low, double high, guint n_parts, guint max_ticks);
double fm_chart_scale_tick (const FmChartScale *self, guint index);
/** Place of @value between @at_min and @at_max (pixels, either may be larger); clamped to them. */
double fm_chart_scale_place (const FmChartScale *self, double value, double at_min, double at_max);
/** "A" .. "Z": the short name of mark or column @index, below 26. Static. */
const char *fm_chart_letter (guint index);
/** Left edge and width of bar @index of @n in @width pixels; a quarter of each slot stays empty. */
void fm_chart_bar_slot (guint index, guint n, double width, double *x, double *bar_width);
/**
 * The chart in words: every mark, then the lowest and the highest.
 * @labels: names of the marks; @values: NaN = not known
 */
char *fm_chart_describe (
    const char *const *labels, const double *values, guint n, int decimals, const char *unit);

G_END_DECLS

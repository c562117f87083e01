/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-scale.c - where marks of a chart go, as plain numbers */
#include "core/base/fm-chart-scale.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

static void
range_with_zero (const double *values, guint n, double *low, double *high)
{
  *low = 0.0;
  *high = 0.0;
  for (guint i = 0; i < n; i++) {
    if (!isfinite (values[i]))
      continue;
    *low = MIN (*low, values[i]);
    *high = MAX (*high, values[i]);
  }
  if (*high - *low <= 0.0)
    *high = 1.0;
}

static double
next_step (double step)
{
  double power = pow (10.0, floor (log10 (step) + 1e-9));
  int lead = (int)lround (step / power);

  return power * (lead == 1 ? 2.0 : lead == 2 ? 5.0 : 10.0);
}

const char *
fm_chart_letter (guint index)
{
  static const char letters[][2] = { "A", "B", "C", "D", "E", "F", "G", "H", "I",
                                     "J", "K", "L", "M", "N", "O", "P", "Q", "R",
                                     "S", "T", "U", "V", "W", "X", "Y", "Z" };

  g_return_val_if_fail (index < G_N_ELEMENTS (letters), "");
  return letters[index];
}

void
fm_chart_scale_init (FmChartScale *self, const double *values, guint n, guint max_ticks)
{
  double low;
  double high;

  range_with_zero (values, n, &low, &high);
  fm_chart_scale_init_between (self, low, high, max_ticks);
}

void
fm_chart_scale_init_between (FmChartScale *self, double low, double high, guint max_ticks)
{
  g_return_if_fail (max_ticks >= 3);
  /* A span lost in the rounding of its ends could have no steps. */
  if (!(high - low > 1e-9 * MAX (fabs (low), fabs (high)))) {
    low -= 0.5;
    high = low + 1.0;
  }
  self->step = pow (10.0, floor (log10 ((high - low) / max_ticks)));
  for (;;) {
    /* A hair of tolerance keeps 0.3 / 0.1 from needing a fourth step. */
    double first = floor (low / self->step + 1e-9);
    double last = ceil (high / self->step - 1e-9);

    self->n_ticks = (guint)(last - first) + 1;
    self->min = first * self->step;
    self->max = last * self->step;
    if (self->n_ticks <= max_ticks)
      break;
    self->step = next_step (self->step);
  }
  self->decimals = MAX (0, (int)-floor (log10 (self->step) + 1e-9));
}

void
fm_chart_scale_init_ends (
    FmChartScale *self, double low, double high, guint n_parts, guint max_ticks)
{
  guint n_steps = MIN (MAX (n_parts, 1), max_ticks - 1);

  g_return_if_fail (high > low);
  while (MAX (n_parts, 1) % n_steps != 0)
    n_steps--;
  self->min = low;
  self->max = high;
  self->step = (high - low) / n_steps;
  self->n_ticks = n_steps + 1;
  self->decimals = fmod (low, 1.0) == 0.0 && fmod (self->step, 1.0) == 0.0 ? 0 : 1;
}

double
fm_chart_scale_tick (const FmChartScale *self, guint index)
{
  return self->min + self->step * index;
}

double
fm_chart_scale_place (const FmChartScale *self, double value, double at_min, double at_max)
{
  double share = CLAMP ((value - self->min) / (self->max - self->min), 0.0, 1.0);

  return at_min + (at_max - at_min) * share;
}

void
fm_chart_bar_slot (guint index, guint n, double width, double *x, double *bar_width)
{
  double slot = width / MAX (n, 1);

  *bar_width = slot * 0.75;
  *x = slot * index + (slot - *bar_width) / 2.0;
}

static void
append_extremes (GString *text, const char *const *labels, const double *values, guint n)
{
  guint low = n;
  guint high = n;

  for (guint i = 0; i < n; i++) {
    if (!isfinite (values[i]))
      continue;
    low = low == n || values[i] < values[low] ? i : low;
    high = high == n || values[i] > values[high] ? i : high;
  }
  if (low != n && values[low] < values[high])
    g_string_append_printf (text, _ (" Lowest %s, highest %s."), labels[low], labels[high]);
}

char *
fm_chart_describe (
    const char *const *labels, const double *values, guint n, int decimals, const char *unit)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++) {
    g_autofree char *number = isfinite (values[i])
                                  ? fm_number_format_unit (values[i], decimals, unit)
                                  : g_strdup (_ ("not known"));

    g_string_append_printf (text, "%s%s: %s", i > 0 ? "; " : "", labels[i], number);
  }
  g_string_append_c (text, '.');
  append_extremes (text, labels, values, n);
  return g_string_free (text, FALSE);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-picture.c - a slice of a fitted map, worked out for drawing */
#include "app/map/fm-map-picture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"

#define N_SIDE 41
#define MAX_LEVELS 6
/* how much of the mixture may lie elsewhere for a blend to count as on the slice */
#define NEAR_SLICE 0.02
/* a pointer at the edge is still inside */
#define NEAR_EDGE 1e-6
/* below this ratio of largest to smallest standard error the shading would say nothing */
#define SE_RATIO 1.1

static void
line_free (gpointer data)
{
  FmMapLine *line = data;

  g_free (line->text);
  g_array_unref (line->segments);
  g_free (line);
}

static void
add_line (GPtrArray *lines, char *text, GArray *segments)
{
  FmMapLine *line = g_new0 (FmMapLine, 1);

  line->text = text;
  line->segments = segments;
  g_ptr_array_add (lines, line);
}

static void
take_corners (FmMapPicture *self, const char *const *names)
{
  for (int i = 0; i < 3; i++) {
    const guint component = self->slice.component[i];
    g_autofree char *share =
        fm_number_format_unit (100.0 * (self->slice.corner[component] + self->slice.span), 0, "%");

    self->name[i] = g_strdup (names[component]);
    self->corner[i] = g_strdup_printf ("%s %s", names[component], share);
  }
}

static void
take_contours (FmMapPicture *self, const FmMixSurface *surface, const FmMixRegion *region)
{
  g_autoptr (GArray) levels = NULL;
  const int decimals =
      isnan (surface->low) ? 0 : MAX (0, fm_mix_surface_decimals (surface, MAX_LEVELS));

  if (isnan (surface->low) || !(surface->high > surface->low))
    return;
  levels = fm_mix_surface_levels (surface, MAX_LEVELS);
  for (guint i = 0; i < levels->len; i++) {
    const double level = g_array_index (levels, double, i);
    GArray *segments = fm_mix_surface_contour (surface, level, region);

    add_line (self->contours, fm_number_format (level, decimals), segments);
  }
}

static void
add_limit (FmMapPicture *self, const FmMapLimit *limit, double value)
{
  const int decimals = fm_target_info (limit->kind)->decimals;
  const char *unit = fm_notebook_target_unit (limit->kind);
  g_autofree char *number = NULL;
  FmMixSegment segment;
  GArray *segments;

  if (!isfinite (value) || !fm_mix_slice_line (&self->slice, limit->limit.a, value, &segment))
    return;
  number = fm_number_to_edit (value, decimals);
  segments = g_array_new (FALSE, FALSE, sizeof (FmMixSegment));
  g_array_append_val (segments, segment);
  add_line (self->limits, g_strdup_printf ("%s %s %s", fm_target_name (limit->kind), number, unit),
            segments);
}

static void
take_limits (FmMapPicture *self, const GPtrArray *limits)
{
  for (guint i = 0; i < limits->len; i++) {
    const FmMapLimit *limit = g_ptr_array_index (limits, i);

    if (!limit->is_used)
      continue;
    add_limit (self, limit, limit->limit.low);
    add_limit (self, limit, limit->limit.high);
  }
}

static void
take_sureness (FmMapPicture *self)
{
  const FmMixSurface *surface = self->surface;

  self->se_less = self->se_least = NAN;
  if (isnan (surface->se_low) || surface->se_high <= SE_RATIO * surface->se_low)
    return;
  self->se_less = surface->se_low + (surface->se_high - surface->se_low) / 3.0;
  self->se_least = surface->se_low + (surface->se_high - surface->se_low) * 2.0 / 3.0;
}

static void
place_marks (FmMapPicture *self)
{
  for (guint i = 0; i < self->marks->len; i++) {
    double u[3];
    const double *x = g_array_index (self->marks, FmMapMark, i).x;
    const double off = fm_mix_slice_from_shares (&self->slice, x, u);
    const FmMapPlaced placed = { fm_mix_slice_to_plane (u), off <= NEAR_SLICE, i };

    if (MIN (u[0], MIN (u[1], u[2])) > -NEAR_SLICE)
      g_array_append_val (self->placed, placed);
  }
}

FmMapPicture *
fm_map_picture_new (FmMapDocument *document, const FmMapFit *fit, const FmMixSlice *slice)
{
  FmMapPicture *self = g_new0 (FmMapPicture, 1);
  FmMixSurface *surface = fm_mix_surface_new (fit->fit, slice, &fit->region, N_SIDE);

  self->surface = surface;
  self->fit = fit;
  self->slice = *slice;
  self->response = fit->response;
  self->predicts = fit->predicts;
  self->contours = g_ptr_array_new_with_free_func (line_free);
  self->limits = g_ptr_array_new_with_free_func (line_free);
  self->placed = g_array_new (FALSE, FALSE, sizeof (FmMapPlaced));
  self->outline = fm_mix_slice_outline (slice, &fit->region);
  self->marks = fm_map_marks_new (document, fit);
  self->low = surface->low;
  self->high = surface->high;
  take_corners (self, fm_map_document_get_short_names (document));
  if (fit->predicts)
    take_contours (self, surface, &fit->region);
  take_limits (self, fm_map_document_get_limits (document));
  take_sureness (self);
  place_marks (self);
  return self;
}

void
fm_map_picture_free (FmMapPicture *self)
{
  for (int i = 0; i < 3; i++) {
    g_free (self->corner[i]);
    g_free (self->name[i]);
  }
  g_ptr_array_unref (self->contours);
  g_ptr_array_unref (self->limits);
  g_array_unref (self->outline);
  fm_mix_surface_free (self->surface);
  g_array_unref (self->marks);
  g_array_unref (self->placed);
  g_free (self);
}

gboolean
fm_map_picture_blend_at (const FmMapPicture *self, FmMixPlanePoint at, double *x)
{
  double u[3];

  fm_mix_slice_from_plane (at, u);
  fm_mix_slice_to_shares (&self->slice, u, x);
  return fm_mix_region_contains (&self->fit->region, x, NEAR_EDGE);
}

char *
fm_map_picture_text_at (const FmMapPicture *self, FmMapDocument *document, FmMixPlanePoint at)
{
  const int decimals = fm_map_response_decimals (self->response);
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (self->response, &unit);
  double x[FM_MIX_MAX_COMPONENTS];
  const gboolean is_inside = fm_map_picture_blend_at (self, at, x);
  g_autofree char *shares = fm_map_document_shares_text (document, x);
  FmMixPrediction prediction;

  if (!is_inside)
    /* Translators: shares of a blend. */
    return g_strdup_printf (_ ("%s: outside of the region of the map."), shares);
  if (!self->predicts)
    return g_strdup_printf (_ ("%s: the map does not predict yet."), shares);
  fm_mix_predict_within (self->fit->fit, x, &wording, &prediction);
  g_autofree char *mean = fm_number_format (prediction.mean, decimals);
  g_autofree char *low = fm_number_format (prediction.low, decimals);
  g_autofree char *high = fm_number_format (prediction.high, decimals);
  /* Translators: shares of a blend, three numbers. */
  return g_strdup_printf (_ ("%s: predicted %s (95 %% interval of the mean %s to %s)."), shares,
                          mean, low, high);
}

char *
fm_map_picture_describe (const FmMapPicture *self, FmMapDocument *document)
{
  const int decimals = fm_map_response_decimals (self->response);
  g_autofree char *low = fm_number_format (self->low, decimals);
  g_autofree char *high = fm_number_format (self->high, decimals);
  GString *text = g_string_new (NULL);

  /* Translators: what a corner of the triangle is, three times: "Chuck 60 %". */
  g_string_append_printf (text,
                          _ ("Triangle with %s at the top, %s at the left, %s at the right. "),
                          self->corner[0], self->corner[1], self->corner[2]);
  if (isnan (self->low))
    g_string_append (text, _ ("The region does not reach this slice. "));
  else if (!self->predicts)
    g_string_append (text, _ ("The map does not predict yet, so it has no curves. "));
  else
    /* Translators: "liking", two numbers. */
    g_string_append_printf (text, _ ("Within the region, predicted %s lies between %s and %s. "),
                            fm_map_fit_word (self->response), low, high);
  for (guint i = 0; i < self->placed->len; i++) {
    const FmMapPlaced *placed = &g_array_index (self->placed, FmMapPlaced, i);
    const FmMapMark *mark = &g_array_index (self->marks, FmMapMark, placed->index);
    g_autofree char *one = fm_map_mark_text (mark, document, self->response);

    if (mark->kind != FM_MAP_MARK_VERSION && placed->on_slice)
      g_string_append_printf (text, "%s ", one);
  }
  g_string_append (text, _ ("All points stand in the table below."));
  return g_string_free (text, FALSE);
}

char *
fm_map_picture_legend (const FmMapPicture *self)
{
  const int decimals = fm_map_response_decimals (self->response) + 1;
  GString *text = g_string_new (
      self->predicts
          ? _ ("● version with its number   ★ predicted best   ◆ worth trying next   ? least known")
          : _ ("● version with its number   ? least known"));
  gboolean has_off = FALSE;

  for (guint i = 0; i < self->placed->len; i++)
    has_off |= !g_array_index (self->placed, FmMapPlaced, i).on_slice;
  if (has_off)
    g_string_append (text, _ ("   ○ lies off this slice"));
  g_string_append_c (text, '\n');
  g_string_append (text, _ ("Thick line: the region of the map."));
  if (self->predicts)
    g_string_append (text, _ (" Curves: equal predicted values. Shades: the stronger, the "
                              "higher."));
  if (self->limits->len > 0)
    g_string_append (text, _ (" Dashes: limits of the brief."));
  if (!isnan (self->se_less)) {
    g_autofree char *less = fm_number_format (self->se_less, decimals);
    g_autofree char *least = fm_number_format (self->se_least, decimals);

    /* Translators: two numbers. */
    g_string_append_printf (text,
                            _ (" Hatched: less sure (standard error from %s). Crosshatched: least "
                               "sure (from %s)."),
                            less, least);
  }
  return g_string_free (text, FALSE);
}

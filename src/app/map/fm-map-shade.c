/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-shade.c - a map's predicted values as shades, and hatches where it is unsure of them */
#include "app/map/fm-map-shade.h"

#include <math.h>

#include "core/base/fm-number.h"

/* A shade is worked out for so many pixels each way, and smoothed between. */
#define GRAIN_PX 4
#define N_SHADES 64
#define HATCH_PX 7.0
#define KEY_WIDTH_PX 12.0
#define KEY_HEIGHT_PX 72.0
#define GAP_PX 4.0

static gboolean
has_shades (const FmMapPicture *picture)
{
  return picture->predicts && picture->surface != NULL && picture->high > picture->low;
}

static void
fill_shades (const FmChartCanvas *canvas, guint32 shades[N_SHADES])
{
  for (guint i = 0; i < N_SHADES; i++) {
    const FmColour colour =
        fm_colour_ramp (&canvas->palette.low, &canvas->palette.high, (double)i / (N_SHADES - 1));

    shades[i] = 0xff000000u | (guint32)lround (255 * colour.red) << 16 |
                (guint32)lround (255 * colour.green) << 8 | (guint32)lround (255 * colour.blue);
  }
}

static double
mean_at (const FmMapPicture *picture, FmMixPlanePoint at)
{
  double u[3], mean, se;
  double sum = 0;

  fm_mix_slice_from_plane (at, u);
  /* Beside the triangle as at its edge, so that the edge itself is smooth. */
  for (guint i = 0; i < 3; i++)
    sum += u[i] = MAX (u[i], 0);
  for (guint i = 0; i < 3; i++)
    u[i] /= sum;
  return fm_mix_surface_at (picture->surface, u, &mean, &se) ? mean : picture->low;
}

static cairo_surface_t *
shades_new (const FmMapPicture *picture, const FmMapFrame *frame, const FmChartCanvas *canvas)
{
  const int width = (int)ceil (canvas->width / GRAIN_PX);
  const int height = (int)ceil (canvas->height / GRAIN_PX);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  unsigned char *data = cairo_image_surface_get_data (image);
  guint32 shades[N_SHADES];

  fill_shades (canvas, shades);
  for (int y = 0; data != NULL && y < height; y++) {
    guint32 *line = (guint32 *)(void *)(data + y * cairo_image_surface_get_stride (image));

    for (int x = 0; x < width; x++) {
      const FmMixPlanePoint at =
          fm_map_frame_back (frame, (x + 0.5) * GRAIN_PX, (y + 0.5) * GRAIN_PX);
      const double part = (mean_at (picture, at) - picture->low) / (picture->high - picture->low);

      line[x] = shades[(guint)lround (CLAMP (part, 0, 1) * (N_SHADES - 1))];
    }
  }
  cairo_surface_mark_dirty (image);
  return image;
}

void
fm_map_shade_region (const FmMapPicture *picture, const FmMapFrame *frame, FmChartCanvas *canvas)
{
  cairo_new_path (canvas->cr);
  for (guint i = 0; i < picture->outline->len; i++) {
    double x, y;

    fm_map_frame_place (frame, g_array_index (picture->outline, FmMixPlanePoint, i), &x, &y);
    cairo_line_to (canvas->cr, x, y);
  }
  cairo_close_path (canvas->cr);
}

void
fm_map_shade_draw (const FmMapPicture *picture, const FmMapFrame *frame, FmChartCanvas *canvas)
{
  cairo_surface_t *image;

  if (!has_shades (picture) || picture->outline->len == 0)
    return;
  image = shades_new (picture, frame, canvas);
  cairo_save (canvas->cr);
  fm_map_shade_region (picture, frame, canvas);
  cairo_clip (canvas->cr);
  cairo_scale (canvas->cr, GRAIN_PX, GRAIN_PX);
  cairo_set_source_surface (canvas->cr, image, 0, 0);
  cairo_pattern_set_extend (cairo_get_source (canvas->cr), CAIRO_EXTEND_PAD);
  cairo_pattern_set_filter (cairo_get_source (canvas->cr), CAIRO_FILTER_BILINEAR);
  cairo_paint (canvas->cr);
  cairo_restore (canvas->cr);
  cairo_surface_destroy (image);
}

static void
add_cell (const FmMapFrame *frame, cairo_t *cr, const FmMixSurfacePoint *const corner[3])
{
  for (guint i = 0; i < 3; i++) {
    double x, y;

    fm_map_frame_place (frame, fm_mix_slice_to_plane (corner[i]->u), &x, &y);
    if (i == 0)
      cairo_move_to (cr, x, y);
    else
      cairo_line_to (cr, x, y);
  }
  cairo_close_path (cr);
}

static gboolean
is_unsure (const FmMixSurfacePoint *const corner[3], double from_se)
{
  return (corner[0]->se + corner[1]->se + corner[2]->se) / 3 >= from_se;
}

/* The cells whose standard error is @from_se or more. */
static void
add_unsure (const FmMapPicture *picture, const FmMapFrame *frame, cairo_t *cr, double from_se)
{
  const FmMixSurface *surface = picture->surface;

  for (guint row = 0; row + 1 < surface->n_side; row++)
    for (guint column = 0; column <= row; column++) {
      const FmMixSurfacePoint *up[] = { fm_mix_surface_get (surface, row, column),
                                        fm_mix_surface_get (surface, row + 1, column),
                                        fm_mix_surface_get (surface, row + 1, column + 1) };
      const FmMixSurfacePoint *down[] = { up[0], NULL, up[2] };

      if (is_unsure (up, from_se))
        add_cell (frame, cr, up);
      if (column == row)
        continue;
      down[1] = fm_mix_surface_get (surface, row, column + 1);
      if (is_unsure (down, from_se))
        add_cell (frame, cr, down);
    }
}

static void
hatch (const FmMapPicture *picture,
       const FmMapFrame *frame,
       FmChartCanvas *canvas,
       double from_se,
       double rise)
{
  cairo_t *cr = canvas->cr;

  cairo_save (cr);
  fm_map_shade_region (picture, frame, canvas);
  cairo_clip (cr);
  cairo_new_path (cr);
  add_unsure (picture, frame, cr, from_se);
  cairo_clip (cr);
  fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, 0.5);
  cairo_set_line_width (cr, 0.8);
  for (double at = -canvas->height; at < canvas->width + canvas->height; at += HATCH_PX) {
    cairo_move_to (cr, at, rise > 0 ? canvas->height : 0);
    cairo_rel_line_to (cr, canvas->height, -rise * canvas->height);
  }
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
fm_map_shade_hatch (const FmMapPicture *picture, const FmMapFrame *frame, FmChartCanvas *canvas)
{
  if (picture->surface == NULL || isnan (picture->se_less) || picture->outline->len == 0)
    return;
  hatch (picture, frame, canvas, picture->se_less, 1);
  hatch (picture, frame, canvas, picture->se_least, -1);
}

/* No corner of the key lies in the region, and none of the region in the key. */
static gboolean
is_beside_region (const FmMapPicture *picture,
                  const FmMapFrame *frame,
                  FmChartCanvas *canvas,
                  const FmBox *key)
{
  gboolean meets = FALSE;

  fm_map_shade_region (picture, frame, canvas);
  for (int i = 0; i < 4; i++)
    meets |=
        cairo_in_fill (canvas->cr, key->x + (i % 2) * key->width, key->y + (i / 2) * key->height);
  cairo_new_path (canvas->cr);
  for (guint i = 0; i < picture->outline->len; i++) {
    double x, y;

    fm_map_frame_place (frame, g_array_index (picture->outline, FmMixPlanePoint, i), &x, &y);
    meets |= fm_box_distance (key, x, y) == 0;
  }
  return !meets;
}

static void
draw_ramp (FmChartCanvas *canvas, const FmBox *ramp)
{
  cairo_pattern_t *pattern = cairo_pattern_create_linear (0, ramp->y + ramp->height, 0, ramp->y);

  for (guint i = 0; i <= 8; i++) {
    const FmColour colour = fm_colour_ramp (&canvas->palette.low, &canvas->palette.high, i / 8.0);

    cairo_pattern_add_color_stop_rgb (pattern, i / 8.0, colour.red, colour.green, colour.blue);
  }
  cairo_new_path (canvas->cr);
  cairo_rectangle (canvas->cr, ramp->x, ramp->y, ramp->width, ramp->height);
  cairo_set_source (canvas->cr, pattern);
  cairo_fill_preserve (canvas->cr);
  fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, 1);
  cairo_set_line_width (canvas->cr, 1);
  cairo_stroke (canvas->cr);
  cairo_pattern_destroy (pattern);
}

void
fm_map_shade_key (const FmMapPicture *picture, const FmMapFrame *frame, FmChartCanvas *canvas)
{
  const int decimals = fm_map_response_decimals (picture->response);
  const double line = fm_chart_line_height (canvas->pango);
  const FmBox ramp = { frame->room.x, frame->room.y + line / 2, KEY_WIDTH_PX, KEY_HEIGHT_PX };
  g_autofree char *low = fm_number_format (picture->low, decimals);
  g_autofree char *high = fm_number_format (picture->high, decimals);
  const double x = ramp.x + ramp.width + GAP_PX;
  FmBox key;
  int width, other;

  if (!has_shades (picture))
    return;
  fm_chart_measure_text (canvas->pango, low, &width, NULL);
  fm_chart_measure_text (canvas->pango, high, &other, NULL);
  key = (FmBox){ ramp.x, frame->room.y, KEY_WIDTH_PX + 2 * GAP_PX + MAX (width, other),
                 KEY_HEIGHT_PX + line };
  if (!is_beside_region (picture, frame, canvas, &key) || !fm_chart_canvas_is_free (canvas, &key))
    return;
  cairo_rectangle (canvas->cr, key.x, key.y, key.width, key.height);
  fm_chart_canvas_fill_ground (canvas);
  draw_ramp (canvas, &ramp);
  fm_chart_canvas_text (canvas, high, x, ramp.y, 0, 0);
  fm_chart_canvas_text (canvas, low, x, ramp.y + ramp.height, 0, 0);
  fm_chart_canvas_keep_clear (canvas, &key);
}

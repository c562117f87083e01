/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-frame.c - where the plane of a map lies on its canvas */
#include "app/map/fm-map-frame.h"

#include <math.h>

#define MARGIN_SIDE 16
#define MARGIN_LINE 30 /* above and below, for the names of the corners */
#define SMALLEST_SIDE 10
#define HALF_ROOT_3 0.866025403784
/* Of its longer side, around the region. */
#define ROUND_PART 0.08
/* A region this large is shown in the whole triangle. */
#define WHOLE_PART 0.85

typedef struct {
  double left, right, lower, upper;
} Bounds;

static void
widen (Bounds *self, FmMixPlanePoint at)
{
  self->left = MIN (self->left, at.x);
  self->right = MAX (self->right, at.x);
  self->lower = MIN (self->lower, at.y);
  self->upper = MAX (self->upper, at.y);
}

static Bounds
bounds_of (const FmMapPicture *picture)
{
  const Bounds whole = { 0, 1, 0, HALF_ROOT_3 };
  Bounds bounds = { INFINITY, -INFINITY, INFINITY, -INFINITY };
  double around;

  if (picture->outline->len == 0)
    return whole;
  for (guint i = 0; i < picture->outline->len; i++)
    widen (&bounds, g_array_index (picture->outline, FmMixPlanePoint, i));
  for (guint i = 0; i < picture->placed->len; i++)
    widen (&bounds, g_array_index (picture->placed, FmMapPlaced, i).at);
  around = ROUND_PART * MAX (bounds.right - bounds.left, bounds.upper - bounds.lower);
  bounds = (Bounds){ MAX (bounds.left - around, 0), MIN (bounds.right + around, 1),
                     MAX (bounds.lower - around, 0), MIN (bounds.upper + around, HALF_ROOT_3) };
  if (bounds.right - bounds.left > WHOLE_PART ||
      bounds.upper - bounds.lower > WHOLE_PART * HALF_ROOT_3)
    return whole;
  return bounds;
}

void
fm_map_frame_init (FmMapFrame *self, const FmMapPicture *picture, double width, double height)
{
  const Bounds bounds = bounds_of (picture);
  const double across = MAX (bounds.right - bounds.left, 1e-6);
  const double up = MAX (bounds.upper - bounds.lower, 1e-6);

  self->room = (FmBox){ MARGIN_SIDE, MARGIN_LINE, MAX (width - 2 * MARGIN_SIDE, SMALLEST_SIDE),
                        MAX (height - 2 * MARGIN_LINE, SMALLEST_SIDE) };
  self->scale = MIN (self->room.width / across, self->room.height / up);
  self->left = bounds.left - (self->room.width / self->scale - across) / 2;
  self->lower = bounds.lower - (self->room.height / self->scale - up) / 2;
}

void
fm_map_frame_place (const FmMapFrame *self, FmMixPlanePoint at, double *x, double *y)
{
  *x = self->room.x + (at.x - self->left) * self->scale;
  *y = self->room.y + self->room.height - (at.y - self->lower) * self->scale;
}

FmMixPlanePoint
fm_map_frame_back (const FmMapFrame *self, double x, double y)
{
  return (FmMixPlanePoint){ self->left + (x - self->room.x) / self->scale,
                            self->lower + (self->room.y + self->room.height - y) / self->scale };
}

gboolean
fm_map_frame_shows (const FmMapFrame *self, FmMixPlanePoint at)
{
  double x, y;

  fm_map_frame_place (self, at, &x, &y);
  return fm_box_distance (&self->room, x, y) < 0.5;
}

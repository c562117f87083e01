/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-box.c - rectangles of a drawing, and a free place for a label among them */
#include "core/base/fm-box.h"

#include <math.h>

/* How many times the gap a label may stand off its mark. */
#define MAX_GAPS 4
/* Sums of the same numbers in another order differ by less. */
#define HAIR 1e-6

gboolean
fm_box_overlaps (const FmBox *self, const FmBox *other)
{
  return self->x < other->x + other->width - HAIR && other->x < self->x + self->width - HAIR &&
         self->y < other->y + other->height - HAIR && other->y < self->y + self->height - HAIR;
}

gboolean
fm_box_is_within (const FmBox *self, const FmBox *room)
{
  return self->x >= room->x - HAIR && self->x + self->width <= room->x + room->width + HAIR &&
         self->y >= room->y - HAIR && self->y + self->height <= room->y + room->height + HAIR;
}

FmBox
fm_box_moved_into (const FmBox *self, const FmBox *room)
{
  FmBox moved = *self;

  moved.x = MAX (MIN (moved.x, room->x + room->width - moved.width), room->x);
  moved.y = MAX (MIN (moved.y, room->y + room->height - moved.height), room->y);
  return moved;
}

FmBox
fm_box_grown (const FmBox *self, double by)
{
  return (FmBox){ self->x - by, self->y - by, self->width + 2.0 * by, self->height + 2.0 * by };
}

double
fm_box_distance (const FmBox *self, double x, double y)
{
  const double beside = MAX (0.0, MAX (self->x - x, x - self->x - self->width));
  const double above = MAX (0.0, MAX (self->y - y, y - self->y - self->height));

  return hypot (beside, above);
}

/* @side: -1 before the mark, 0 at its middle, 1 behind it. */
static double
at_side (double mark, double mark_size, double size, int side, double gap)
{
  if (side < 0)
    return mark - gap - size;
  return side > 0 ? mark + mark_size + gap : mark + (mark_size - size) / 2.0;
}

static gboolean
is_free (const FmBox *label, const FmBox *room, const FmBox *taken, guint n_taken)
{
  if (!fm_box_is_within (label, room))
    return FALSE;
  for (guint i = 0; i < n_taken; i++)
    if (fm_box_overlaps (label, &taken[i]))
      return FALSE;
  return TRUE;
}

gboolean
fm_box_place_label (FmBox *label,
                    const FmBox *mark,
                    double gap,
                    const FmBox *room,
                    const FmBox *taken,
                    guint n_taken)
{
  static const int sides[][2] = {
    { 1, 0 }, { -1, 0 }, { 0, -1 }, { 0, 1 }, { 1, -1 }, { -1, -1 }, { 1, 1 }, { -1, 1 },
  };

  for (guint far = 1; far <= MAX_GAPS; far++) {
    for (guint i = 0; i < G_N_ELEMENTS (sides); i++) {
      const FmBox tried = {
        at_side (mark->x, mark->width, label->width, sides[i][0], far * gap),
        at_side (mark->y, mark->height, label->height, sides[i][1], far * gap),
        label->width,
        label->height,
      };

      if (is_free (&tried, room, taken, n_taken)) {
        *label = tried;
        return TRUE;
      }
    }
  }
  return FALSE;
}

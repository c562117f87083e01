/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-box.h - rectangles of a drawing, and a free place for a label among them
 *
 * Plain numbers in one unit (pixels, points); y grows downwards.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  double x;
  double y;
  double width;
  double height;
} FmBox;

/** TRUE when the insides have a point in common: boxes that only touch do not overlap. */
gboolean fm_box_overlaps (const FmBox *self, const FmBox *other);
/** TRUE when no part of it lies outside of @room. */
gboolean fm_box_is_within (const FmBox *self, const FmBox *room);
/** Its smallest move that brings it into @room; to the start where it is larger than that. */
FmBox fm_box_moved_into (const FmBox *self, const FmBox *room);
/** The same middle, every side @by further out. */
FmBox fm_box_grown (const FmBox *self, double by);
/** Distance from a point to the nearest point of the box; 0 inside. */
double fm_box_distance (const FmBox *self, double x, double y);
/**
 * fm_box_place_label:
 * @label: (inout): its size in, its place out
 * @mark: what the label names
 * @gap: distance of the two
 * @room: where the label has to stay
 * @taken: (array length=n_taken): what it may not overlap
 *
 * Tries right, left, above and below of the mark, then the corners, then the same further out.
 *
 * Returns: %FALSE when every one of these places is taken; @label then is left as it was
 */
gboolean fm_box_place_label (FmBox *label,
                             const FmBox *mark,
                             double gap,
                             const FmBox *room,
                             const FmBox *taken,
                             guint n_taken);

G_END_DECLS

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-frame.h - where the plane of a map lies on its canvas: as near as its region allows */
#pragma once

#include "app/map/fm-map-picture.h"
#include "core/base/fm-box.h"

G_BEGIN_DECLS

typedef struct {
  FmBox room;  /* of what lies in the plane, in pixels */
  double left; /* plane at the left and lower edge of the room */
  double lower;
  double scale; /* pixels of a side of the triangle */
} FmMapFrame;

/** Shows the region and all that is marked; all of the triangle where they nearly fill it. */
void fm_map_frame_init (FmMapFrame *self, const FmMapPicture *picture, double width, double height);
void fm_map_frame_place (const FmMapFrame *self, FmMixPlanePoint at, double *x, double *y);
FmMixPlanePoint fm_map_frame_back (const FmMapFrame *self, double x, double y);
/** TRUE when @at lies in the room. */
gboolean fm_map_frame_shows (const FmMapFrame *self, FmMixPlanePoint at);

G_END_DECLS

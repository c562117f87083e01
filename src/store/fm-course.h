/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-course.h - how a blend went from version to version: what it lost, scored and cost */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** One value of a version. */
typedef struct {
  int version_number;
  gint64 time_s; /* unix seconds: when it was made, or saved */
  double value;
  double low; /* of several values that @value is the mean of; NaN without */
  double high;
  guint n; /* how many values it is the mean of */
} FmCourseStop;

typedef struct {
  GArray *
      cook_loss_pct; /* FmCourseStop of each version measured, by number: percent of the raw mass */
  GArray *rating;    /* of each experiment rated, by date: 1 .. 10 */
  GArray *cost_per_kg; /* of each version whose lines all have a price, by date saved: edible, in
                        * the notebook's currency */
} FmCourse;

/**
 * fm_course_load:
 * Errors: the store's, cancelled. Returns: (transfer full).
 */
FmCourse *
fm_course_load (FmNotebook *self, gint64 blend_id, GCancellable *cancellable, GError **error);
void fm_course_free (FmCourse *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCourse, fm_course_free)

G_END_DECLS

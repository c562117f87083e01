/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-course.c - how a blend went from version to version */
#include "store/fm-course.h"

#include <math.h>

#include "core/formula/fm-analysis.h"
#include "store/fm-experiments.h"
#include "store/fm-versions.h"

static GArray *
stops_new (void)
{
  return g_array_new (FALSE, FALSE, sizeof (FmCourseStop));
}

static FmCourseStop *
stop_of_version (GArray *stops, const FmExperimentInfo *info)
{
  const FmCourseStop fresh = { .version_number = info->version_number,
                               .time_s = info->made_at,
                               .low = INFINITY,
                               .high = -INFINITY };

  for (guint i = 0; i < stops->len; i++)
    if (g_array_index (stops, FmCourseStop, i).version_number == info->version_number)
      return &g_array_index (stops, FmCourseStop, i);
  g_array_append_val (stops, fresh);
  return &g_array_index (stops, FmCourseStop, stops->len - 1);
}

static void
add_loss (GArray *stops, const FmExperimentInfo *info)
{
  FmCourseStop *stop;

  if (isnan (info->cook_loss_pct))
    return;
  stop = stop_of_version (stops, info);
  stop->value = (stop->value * stop->n + info->cook_loss_pct) / (stop->n + 1);
  stop->n++;
  stop->low = fmin (stop->low, info->cook_loss_pct);
  stop->high = fmax (stop->high, info->cook_loss_pct);
}

static void
add_rating (GArray *stops, const FmExperimentInfo *info)
{
  const FmCourseStop stop = { info->version_number, info->made_at, info->rating, NAN, NAN, 1 };

  if (info->rating > 0)
    g_array_append_val (stops, stop);
}

static int
compare_numbers (gconstpointer a, gconstpointer b)
{
  return ((const FmCourseStop *)a)->version_number - ((const FmCourseStop *)b)->version_number;
}

/* One value is no range. */
static void
finish_losses (GArray *stops)
{
  g_array_sort (stops, compare_numbers);
  for (guint i = 0; i < stops->len; i++) {
    FmCourseStop *stop = &g_array_index (stops, FmCourseStop, i);

    if (stop->n == 1)
      stop->low = stop->high = NAN;
  }
}

static gboolean
read_experiments (FmCourse *self,
                  FmNotebook *notebook,
                  gint64 blend_id,
                  GCancellable *cancellable,
                  GError **error)
{
  const FmExperimentFilter filter = { .blend_id = blend_id, .sort = FM_EXPERIMENT_SORT_DATE };
  g_autoptr (GPtrArray) rows = fm_experiments_list (notebook, &filter, cancellable, error);

  if (rows == NULL)
    return FALSE;
  for (guint i = 0; i < rows->len; i++) {
    add_loss (self->cook_loss_pct, g_ptr_array_index (rows, i));
    add_rating (self->rating, g_ptr_array_index (rows, i));
  }
  finish_losses (self->cook_loss_pct);
  return TRUE;
}

static gboolean
read_costs (FmCourse *self,
            FmNotebook *notebook,
            gint64 blend_id,
            GCancellable *cancellable,
            GError **error)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend_id, error);

  for (guint i = 0; versions != NULL && i < versions->len; i++) {
    const FmVersionInfo *info = g_ptr_array_index (versions, i);
    g_autoptr (FmFormula) formula = NULL;
    g_autoptr (FmAnalysis) analysis = NULL;
    FmCourseStop stop = { info->number, info->saved_at, NAN, NAN, NAN, 1 };

    if (g_cancellable_set_error_if_cancelled (cancellable, error))
      return FALSE;
    formula = fm_versions_load (notebook, info->id, error);
    if (formula == NULL)
      return FALSE;
    analysis = fm_analysis_new (formula);
    stop.value = analysis->cost_per_kg;
    if (!isnan (stop.value))
      g_array_append_val (self->cost_per_kg, stop);
  }
  return versions != NULL;
}

FmCourse *
fm_course_load (FmNotebook *self, gint64 blend_id, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmCourse) course = g_new0 (FmCourse, 1);

  course->cook_loss_pct = stops_new ();
  course->rating = stops_new ();
  course->cost_per_kg = stops_new ();
  if (!read_experiments (course, self, blend_id, cancellable, error) ||
      !read_costs (course, self, blend_id, cancellable, error))
    return NULL;
  return g_steal_pointer (&course);
}

void
fm_course_free (FmCourse *self)
{
  g_array_unref (self->cook_loss_pct);
  g_array_unref (self->rating);
  g_array_unref (self->cost_per_kg);
  g_free (self);
}

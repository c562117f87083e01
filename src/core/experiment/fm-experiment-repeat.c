/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-repeat.c - an experiment that is made as it was planned, or as another was made */
#include "core/experiment/fm-experiment-repeat.h"

#include <math.h>

/* What is set again for the next making, and not measured of it. */
static const size_t settings[] = {
  G_STRUCT_OFFSET (FmExperiment, plate_mm),
  G_STRUCT_OFFSET (FmExperiment, salt_pct),
  G_STRUCT_OFFSET (FmExperiment, surface_salt_pct),
  G_STRUCT_OFFSET (FmExperiment, salt_minutes_before),
  G_STRUCT_OFFSET (FmExperiment, surface_temp_c),
  G_STRUCT_OFFSET (FmExperiment, minutes_side_1),
  G_STRUCT_OFFSET (FmExperiment, minutes_side_2),
  G_STRUCT_OFFSET (FmExperiment, rest_minutes),
};

static gboolean
take_number (FmExperiment *self, const FmExperiment *last, size_t offset)
{
  double *place = G_STRUCT_MEMBER_P (self, offset);
  const double taken = G_STRUCT_MEMBER (double, last, offset);

  if (!isnan (*place) || isnan (taken))
    return FALSE;
  *place = taken;
  return TRUE;
}

gboolean
fm_experiment_take_last (FmExperiment *self, const FmExperiment *last)
{
  gboolean changed = FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (settings); i++)
    changed |= take_number (self, last, settings[i]);
  if (self->grind_passes == 0 && last->grind_passes > 0) {
    self->grind_passes = last->grind_passes;
    changed = TRUE;
  }
  if (self->surface == NULL && last->surface != NULL) {
    self->surface = g_strdup (last->surface);
    changed = TRUE;
  }
  return changed;
}

gboolean
fm_experiment_weigh_as_planned (FmExperiment *self)
{
  gboolean changed = FALSE;

  for (guint i = 0; i < self->weighings->len; i++) {
    FmWeighing *weighing = &g_array_index (self->weighings, FmWeighing, i);

    if (!isnan (weighing->weighed_g) || isnan (weighing->planned_g))
      continue;
    weighing->weighed_g = weighing->planned_g;
    changed = TRUE;
  }
  return changed;
}

static void
forget_masses (FmExperiment *self)
{
  for (guint i = 0; i < self->weighings->len; i++)
    g_array_index (self->weighings, FmWeighing, i).weighed_g = NAN;
  for (guint i = 0; i < self->patties->len; i++)
    g_array_index (self->patties, FmPattyMass, i) = (FmPattyMass){ NAN, NAN };
}

FmExperiment *
fm_experiment_make_again (const FmExperiment *self, gint64 made_at, const char *title)
{
  FmExperiment *again = fm_experiment_copy (self);

  again->id = 0;
  again->made_at = made_at;
  again->rating = 0;
  again->meat_temp_c = NAN;
  g_free (again->title);
  again->title = g_strdup (title);
  g_clear_pointer (&again->notes, g_free);
  g_array_set_size (again->core_readings, 0);
  forget_masses (again);
  return again;
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-process.c - what was done beside what the version plans */
#include "core/experiment/fm-experiment-process.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Where the experiment keeps the number, and whether it is one that is set. */
static const struct {
  size_t offset;
  gboolean is_setting;
} numbers[FM_N_PROCESS_FIELDS] = {
  [FM_PROCESS_MEAT_TEMP] = { G_STRUCT_OFFSET (FmExperiment, meat_temp_c), FALSE },
  [FM_PROCESS_SALT_MINUTES] = { G_STRUCT_OFFSET (FmExperiment, salt_minutes_before), FALSE },
  [FM_PROCESS_DIAMETER] = { G_STRUCT_OFFSET (FmExperiment, patty_diameter_mm), TRUE },
  [FM_PROCESS_THICKNESS] = { G_STRUCT_OFFSET (FmExperiment, patty_thickness_mm), TRUE },
  [FM_PROCESS_SURFACE_TEMP] = { G_STRUCT_OFFSET (FmExperiment, surface_temp_c), FALSE },
  [FM_PROCESS_SIDE_1] = { G_STRUCT_OFFSET (FmExperiment, minutes_side_1), FALSE },
  [FM_PROCESS_SIDE_2] = { G_STRUCT_OFFSET (FmExperiment, minutes_side_2), FALSE },
  [FM_PROCESS_TARGET_CORE] = { G_STRUCT_OFFSET (FmExperiment, target_core_c), TRUE },
  [FM_PROCESS_REST] = { G_STRUCT_OFFSET (FmExperiment, rest_minutes), FALSE },
};

static double
last_plate_mm (const FmProcess *plan)
{
  const GArray *plates = plan->plates_mm;

  return plates->len > 0 ? g_array_index (plates, double, plates->len - 1) : (double)NAN;
}

static char *
plates_text (const FmExperiment *self, const FmUnits *units)
{
  g_autofree char *plate = fm_measure_format (FM_MEASURE_LENGTH, units, self->plate_mm, 1);
  g_autofree char *passes = g_strdup_printf (
      ngettext ("%d pass", "%d passes", (gulong)self->grind_passes), self->grind_passes);

  if (isnan (self->plate_mm))
    return self->grind_passes > 0 ? g_steal_pointer (&passes) : NULL;
  if (self->grind_passes == 0)
    return g_steal_pointer (&plate);
  /* TRANSLATORS: passes through the grinder and the plate of the last one: "2 passes, last 4.5 mm"
   */
  return g_strdup_printf (_ ("%s, last %s"), passes, plate);
}

static gboolean
plates_differ (const FmExperiment *self, const FmProcess *plan)
{
  const guint n_planned = plan->plates_mm->len;

  if (n_planned == 0)
    return FALSE;
  return (!isnan (self->plate_mm) && self->plate_mm != last_plate_mm (plan)) ||
         (self->grind_passes > 0 && (guint)self->grind_passes != n_planned);
}

gboolean
fm_experiment_has_field (FmProcessField field)
{
  return numbers[field].offset != 0 || field == FM_PROCESS_SURFACE || field == FM_PROCESS_PLATES;
}

char *
fm_experiment_field_text (const FmExperiment *self, FmProcessField field, const FmUnits *units)
{
  const FmProcessFieldInfo *info = fm_process_field (field);
  double value;

  if (field == FM_PROCESS_PLATES)
    return plates_text (self, units);
  if (field == FM_PROCESS_SURFACE)
    return g_strdup (self->surface);
  if (numbers[field].offset == 0)
    return NULL;
  value = G_STRUCT_MEMBER (double, self, numbers[field].offset);
  return isnan (value) ? NULL : fm_measure_format (info->measure, units, value, info->decimals);
}

gboolean
fm_experiment_differs (const FmExperiment *self, const FmProcess *plan, FmProcessField field)
{
  double planned, done;

  if (field == FM_PROCESS_PLATES)
    return plates_differ (self, plan);
  if (field == FM_PROCESS_SURFACE)
    return self->surface != NULL && plan->words[field] != NULL &&
           g_strcmp0 (self->surface, plan->words[field]) != 0;
  if (numbers[field].offset == 0)
    return FALSE;
  planned = plan->numbers[field];
  done = G_STRUCT_MEMBER (double, self, numbers[field].offset);
  return !isnan (planned) && !isnan (done) && planned != done;
}

static gboolean
take_number (double *place, double planned)
{
  if (!isnan (*place) || isnan (planned))
    return FALSE;
  *place = planned;
  return TRUE;
}

static gboolean
take_plates (FmExperiment *self, const FmProcess *plan)
{
  gboolean changed = take_number (&self->plate_mm, last_plate_mm (plan));

  if (self->grind_passes == 0 && plan->plates_mm->len > 0) {
    self->grind_passes = (int)plan->plates_mm->len;
    changed = TRUE;
  }
  return changed;
}

gboolean
fm_experiment_take_process (FmExperiment *self, const FmProcess *plan, FmTakeExtent extent)
{
  gboolean changed = take_plates (self, plan);

  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++)
    if (numbers[i].offset != 0 && (extent == FM_TAKE_ALL || numbers[i].is_setting))
      changed |= take_number (&G_STRUCT_MEMBER (double, self, numbers[i].offset), plan->numbers[i]);
  if (self->surface == NULL && plan->words[FM_PROCESS_SURFACE] != NULL) {
    self->surface = g_strdup (plan->words[FM_PROCESS_SURFACE]);
    changed = TRUE;
  }
  return changed;
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-steps.c - what is to be done with a batch, step by step */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"
#include "report/fm-batch-sheet-private.h"
#include "report/fm-batch-sheet-process.h"

/* The plates of all passes, where the sheet is still about the passes that the process plans. */
static char *
planned_plates (const FmProcess *process, const FmBatchSheetInput *input)
{
  const GArray *plates = process->plates_mm;
  const FmUnits metric = { 0 };

  if (plates->len < 2 || (guint)input->grind_passes != plates->len ||
      g_array_index (plates, double, plates->len - 1) != input->plate_mm)
    return NULL;
  return fm_process_field_text (process, FM_PROCESS_PLATES, &metric);
}

char *
fm_batch_sheet_grind_step (const FmFormula *formula, const FmBatchSheetInput *input)
{
  const FmProcess *process = formula->process;
  g_autoptr (GString) step = g_string_new (NULL);
  g_autofree char *plate = fm_number_to_edit (input->plate_mm, 1);
  g_autofree char *plates = planned_plates (process, input);

  if (plates != NULL)
    /* TRANSLATORS: plates in order: "10 mm, then 4.5 mm" */
    g_string_append_printf (step, _ ("Grind through the plates %s"), plates);
  else if (isnan (input->plate_mm))
    g_string_append (step, _ ("Grind: plate not planned"));
  else
    g_string_append_printf (step, _ ("Grind through the %s mm plate"), plate);
  if (input->grind_passes > 0)
    g_string_append_printf (step,
                            ngettext (", %d pass", ", %d passes", (gulong)input->grind_passes),
                            input->grind_passes);
  if (input->plan.grind_loss_pct > 0.0) {
    g_autofree char *loss = fm_number_to_edit (input->plan.grind_loss_pct, 2);

    g_string_append_printf (step, _ (". %s %% is expected to stay in the grinder"), loss);
  }
  g_string_append_c (step, '.');
  return g_string_free (g_steal_pointer (&step), FALSE);
}

static char *
chill_step (const FmBatchSheetInput *input)
{
  g_autofree char *celsius = fm_number_format_unit (input->meat_temp_c, 1, "°C");
  g_autofree char *fahrenheit =
      fm_number_format_unit (fm_celsius_to_fahrenheit (input->meat_temp_c), 0, "°F");

  if (isnan (input->meat_temp_c))
    return g_strdup (_ ("Chill the meat. Measured before grinding: ______ °C."));
  return g_strdup_printf (_ ("Chill the meat to %s (%s) before grinding. Measured: ______ °C."),
                          celsius, fahrenheit);
}

static char *
salt_step (const FmBatchSheetInput *input, const FmBatch *batch)
{
  g_autofree char *salt = fm_number_format_unit (batch->salt_g, 1, "g");
  g_autofree char *each = fm_number_format_unit (batch->salt_per_patty_g, 2, "g");
  g_autofree char *minutes = fm_number_to_edit (input->salt_minutes_before, 1);

  if (isnan (input->salt_minutes_before))
    return g_strdup_printf (_ ("Salt: %s in all, %s for each patty. The moment is not planned."),
                            salt, each);
  return g_strdup_printf (_ ("Salt %s min before cooking: %s in all, %s for each patty."), minutes,
                          salt, each);
}

void
fm_batch_sheet_add_steps (FmBatchSheet *self,
                          const FmFormula *formula,
                          const FmBatchSheetInput *input,
                          const FmBatch *batch)
{
  const FmProcess *process = formula->process;
  const char *doneness = formula->brief->doneness;
  g_autofree char *mass = fm_number_format_unit (input->plan.patty_mass_g, 1, "g");
  g_autofree char *goal = doneness != NULL && *doneness != '\0'
                              ? g_strdup_printf (_ (" The brief asks for: %s."), doneness)
                              : g_strdup ("");

  fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Steps")));
  fm_batch_sheet_add (self, FM_SHEET_STEP, chill_step (input));
  fm_batch_sheet_add_process (self, process, FM_PROCESS_ORDER, FM_PROCESS_ORDER);
  fm_batch_sheet_add (self, FM_SHEET_STEP, fm_batch_sheet_grind_step (formula, input));
  fm_batch_sheet_add_process (self, process, FM_PROCESS_MINCE_TEMP, FM_PROCESS_SEASONINGS);
  if (!isnan (batch->salt_g))
    fm_batch_sheet_add (self, FM_SHEET_STEP, salt_step (input, batch));
  fm_batch_sheet_add (
      self, FM_SHEET_STEP,
      g_strdup_printf (ngettext ("Shape %d patty of %s.", "Shape %d patties of %s each.",
                                 (gulong)input->plan.n_patties),
                       input->plan.n_patties, mass));
  fm_batch_sheet_add_process (self, process, FM_PROCESS_DIAMETER, FM_PROCESS_CHILL);
  fm_batch_sheet_add (self, FM_SHEET_STEP,
                      g_strdup_printf (_ ("Cook: %s.%s Highest core temperature: ______ °C."),
                                       fm_cook_method_name (input->method), goal));
  fm_batch_sheet_add_process (self, process, FM_PROCESS_SURFACE, FM_PROCESS_STEPS);
}

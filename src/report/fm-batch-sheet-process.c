/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-process.c - what a version plans of its process, as steps to tick */
#include "report/fm-batch-sheet-process.h"

#include <glib/gi18n-lib.h>

static void
add_seasonings (FmBatchSheet *self, const FmProcess *process)
{
  for (guint i = 0; i < process->seasonings->len; i++) {
    g_autofree char *text = fm_seasoning_text (fm_process_seasoning (process, i));

    fm_batch_sheet_add (self, FM_SHEET_STEP, g_strdup_printf (_ ("Season. %s."), text));
  }
}

static void
add_method (FmBatchSheet *self, const FmProcess *process)
{
  g_auto (GStrv) steps = fm_process_steps (process);

  if (steps[0] != NULL)
    fm_batch_sheet_add (self, FM_SHEET_HEADING, g_strdup (_ ("Method, in the developer's words")));
  for (guint i = 0; steps[i] != NULL; i++)
    fm_batch_sheet_add (self, FM_SHEET_STEP, g_strdup (steps[i]));
}

static void
add_field (FmBatchSheet *self, const FmProcess *process, FmProcessField field)
{
  const FmUnits metric = { 0 };
  g_autofree char *text = fm_process_field_text (process, field, &metric);

  if (text != NULL)
    fm_batch_sheet_add (self, FM_SHEET_STEP,
                        g_strdup_printf ("%s: %s.", fm_process_field_name (field), text));
}

void
fm_batch_sheet_add_process (FmBatchSheet *self,
                            const FmProcess *process,
                            FmProcessField first,
                            FmProcessField last)
{
  for (int i = first; i <= (int)last; i++) {
    if (i == FM_PROCESS_SEASONINGS)
      add_seasonings (self, process);
    else if (i == FM_PROCESS_STEPS)
      add_method (self, process);
    else if (i != FM_PROCESS_MEAT_TEMP && i != FM_PROCESS_PLATES && i != FM_PROCESS_SALT_MINUTES)
      add_field (self, process, (FmProcessField)i);
  }
}

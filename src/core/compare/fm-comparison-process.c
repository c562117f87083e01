/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-comparison-process.c - which step of the process differs */
#include "core/compare/fm-comparison-private.h"

#include <glib/gi18n-lib.h>

/* A comparison is in metric units throughout. */
static const FmUnits metric = { 0 };

static const FmProcess *
process_of (const FmComparison *self, guint column)
{
  return fm_comparison_item (self, column)->formula->process;
}

static void
add_field (FmComparison *self, FmProcessField field)
{
  const guint n = fm_comparison_n_items (self);
  g_autofree char *key = g_strconcat ("process_", fm_process_field (field)->key, NULL);
  char **texts = g_new0 (char *, n);

  for (guint i = 0; i < n; i++)
    texts[i] = fm_process_field_text (process_of (self, i), field, &metric);
  fm_comparison_add_words (self, FM_COMPARE_SECTION_PROCESS, key, fm_process_field_name (field),
                           texts);
}

/* Returns: TRUE when somebody plans a step of this number, or a later one. */
static gboolean
add_step (FmComparison *self, guint number)
{
  const guint n = fm_comparison_n_items (self);
  g_autofree char *key = g_strdup_printf ("process_step_%u", number);
  g_autofree char *name = g_strdup_printf (_ ("Step %u"), number);
  char **texts = g_new0 (char *, n);
  gboolean found = FALSE;

  for (guint i = 0; i < n; i++) {
    g_auto (GStrv) steps = fm_process_steps (process_of (self, i));

    if (number <= g_strv_length (steps)) {
      texts[i] = g_strdup (steps[number - 1]);
      found = TRUE;
    }
  }
  fm_comparison_add_words (self, FM_COMPARE_SECTION_PROCESS, key, name, texts);
  return found;
}

void
fm_comparison_add_process (FmComparison *self)
{
  guint number = 1;

  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++)
    if (i != FM_PROCESS_STEPS)
      add_field (self, (FmProcessField)i);
  while (add_step (self, number))
    number++;
}

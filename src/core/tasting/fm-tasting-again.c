/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-again.c - the same tasting planned anew, with new codes and orders */
#include <glib/gi18n-lib.h>

#include "core/tasting/fm-tasting-private.h"

FmTasting *
fm_tasting_again (const FmTasting *self, gint64 held_at)
{
  FmTasting *again = fm_tasting_new ();

  /* TRANSLATORS: title of a tasting that is held again */
  again->title = self->title != NULL ? g_strdup_printf (_ ("%s, again"), self->title) : NULL;
  again->held_at = held_at;
  again->tasks = self->tasks;
  again->blinding = self->blinding;
  again->max_per_taster = self->max_per_taster;
  for (guint i = 0; i < self->samples->len; i++) {
    const FmTastingSample *sample = self->samples->pdata[i];
    fm_tasting_add_sample (again, sample->experiment_id, sample->version_id, sample->name);
  }
  for (guint i = 0; i < self->tasters->len; i++)
    fm_tasting_add_taster (again, ((const FmTaster *)self->tasters->pdata[i])->name);
  for (guint i = 0; i < self->attributes->len; i++)
    g_ptr_array_add (again->attributes, g_strdup (self->attributes->pdata[i]));
  for (guint i = 0; i < 2; i++) {
    again->pair[i] = self->pair[i];
    again->triangle[i] = self->triangle[i];
  }
  return again;
}

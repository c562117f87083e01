/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-component.c - one ingredient of a mixture, or a group of them */
#include "core/mixture/fm-mix-blend.h"

FmMixComponent *
fm_mix_component_new (const char *name)
{
  FmMixComponent *self = g_new0 (FmMixComponent, 1);

  self->name = g_strdup (name);
  self->members = g_ptr_array_new_with_free_func (g_free);
  self->ratio = g_array_new (FALSE, TRUE, sizeof (double));
  return self;
}

static gpointer
text_copy (gconstpointer data, gpointer unused)
{
  return g_strdup (data);
}

FmMixComponent *
fm_mix_component_copy (const FmMixComponent *self)
{
  FmMixComponent *copy = g_new0 (FmMixComponent, 1);

  copy->name = g_strdup (self->name);
  copy->members = g_ptr_array_copy (self->members, (GCopyFunc)text_copy, NULL);
  g_ptr_array_set_free_func (copy->members, g_free);
  copy->ratio = g_array_copy (self->ratio);
  return copy;
}

void
fm_mix_component_free (FmMixComponent *self)
{
  if (self == NULL)
    return;
  g_free (self->name);
  g_ptr_array_unref (self->members);
  g_array_unref (self->ratio);
  g_free (self);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-names.c - every formula of a notebook to choose from: drafts and versions */
#include "app/documents/fm-formula-names.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-store-task.h"

FmFormulaName *
fm_formula_name_copy (const FmFormulaName *self)
{
  FmFormulaName *copy = g_memdup2 (self, sizeof *self);

  copy->name = g_strdup (self->name);
  return copy;
}

void
fm_formula_name_free (FmFormulaName *self)
{
  g_free (self->name);
  g_free (self);
}

static void
add_name (GPtrArray *names, const FmBlendInfo *blend, const FmVersionInfo *version)
{
  FmFormulaName *name = g_new0 (FmFormulaName, 1);

  name->blend_id = blend->id;
  name->version_id = version != NULL ? version->id : 0;
  /* TRANSLATORS: name of a blend, number of its version */
  name->name = version != NULL
                   ? g_strdup_printf (_ ("%s, version %d"), blend->name, version->number)
                   /* TRANSLATORS: name of a blend */
                   : g_strdup_printf (_ ("%s, draft"), blend->name);
  g_ptr_array_add (names, name);
}

static gboolean
add_blend (GPtrArray *names, FmNotebook *notebook, const FmBlendInfo *blend, GError **error)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend->id, error);

  if (versions == NULL)
    return FALSE;
  for (guint i = versions->len; i > 0; i--)
    add_name (names, blend, g_ptr_array_index (versions, i - 1));
  add_name (names, blend, NULL);
  return TRUE;
}

GPtrArray *
fm_formula_names_read (FmNotebook *notebook, GError **error)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, error);
  g_autoptr (GPtrArray) names =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_formula_name_free);

  for (guint i = 0; blends != NULL && i < blends->len; i++)
    if (!add_blend (names, notebook, g_ptr_array_index (blends, i), error))
      return NULL;
  return blends != NULL ? g_steal_pointer (&names) : NULL;
}

static gpointer
read_names (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  return fm_formula_names_read (notebook, error);
}

void
fm_formula_names_task (gpointer owner, FmNotebook *notebook, GAsyncReadyCallback done)
{
  fm_store_task (&(FmStoreTask){
      .owner = owner,
      .notebook = notebook,
      .run = read_names,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .done = done,
  });
}

FmFormula *
fm_formula_name_load (const FmFormulaName *self, FmNotebook *notebook, GError **error)
{
  return self->version_id != 0 ? fm_versions_load (notebook, self->version_id, error)
                               : fm_draft_load (notebook, self->blend_id, NULL, error);
}

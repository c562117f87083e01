/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-keep.c - the notebook keeps an ingredient and what it cost */
#include "app/session/fm-ingredient-keep.h"

#include "app/session/fm-clock.h"
#include "app/session/fm-store-task.h"
#include "store/fm-prices.h"
#include "store/fm-versions.h"

static gpointer
note_price (FmNotebook *notebook, gpointer ingredient, GCancellable *cancellable, GError **error)
{
  return GINT_TO_POINTER (fm_prices_record (notebook, ingredient, fm_clock_now_s (), error));
}

static gpointer
keep (FmNotebook *notebook, gpointer ingredient, GCancellable *cancellable, GError **error)
{
  if (!fm_ingredients_save (notebook, ingredient, error))
    return NULL;
  return note_price (notebook, ingredient, cancellable, error);
}

static void
kept_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;

  if (fm_store_task_finish (result, &error) == NULL)
    fm_session_failure (FM_SESSION (source), error);
}

void
fm_ingredient_keep (FmSession *session, FmIngredient *ingredient, gboolean for_reuse)
{
  g_return_if_fail (FM_IS_SESSION (session) && ingredient != NULL);
  if (fm_session_get_notebook (session) == NULL)
    return;
  fm_store_task (&(FmStoreTask){
      .owner = session,
      .notebook = fm_session_get_notebook (session),
      .run = for_reuse ? keep : note_price,
      .data = fm_ingredient_ref (ingredient),
      .free_data = (GDestroyNotify)fm_ingredient_unref,
      .done = kept_cb,
  });
}

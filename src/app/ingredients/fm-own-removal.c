/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-own-removal.c - removing an own entry that no draft uses, with a way back */
#include "app/ingredients/fm-own-removal.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-removal.h"

typedef struct {
  FmSession *session;
  FmIngredient *own;
  FmOwnRemovalSettled settled;
  GWeakRef owner; /* while the toast is shown */
} Removal;

static Removal *
removal_new (GtkWidget *owner, FmSession *session, FmIngredient *own, FmOwnRemovalSettled settled)
{
  Removal *self = g_new0 (Removal, 1);

  self->session = g_object_ref (session);
  self->own = fm_ingredient_ref (own);
  self->settled = settled;
  g_weak_ref_init (&self->owner, owner);
  return self;
}

static void
removal_free (Removal *self)
{
  g_object_unref (self->session);
  fm_ingredient_unref (self->own);
  g_weak_ref_clear (&self->owner);
  g_free (self);
}

static gpointer
remove_own (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Removal *self = data;

  return GINT_TO_POINTER (fm_ingredients_remove (notebook, self->own->id, error));
}

static gpointer
restore (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Removal *self = data;

  return GINT_TO_POINTER (fm_ingredients_save (notebook, self->own, error));
}

static void
start (GtkWidget *owner, FmStoreFunc run, Removal *self, GAsyncReadyCallback done)
{
  fm_session_write (self->session,
                    &(FmStoreTask){ .owner = owner,
                                    .notebook = fm_session_get_notebook (self->session),
                                    .run = run,
                                    .data = self,
                                    .free_data = (GDestroyNotify)removal_free,
                                    .done = done });
}

static void
restored_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  const Removal *self = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;

  fm_store_task_finish (result, &error);
  self->settled (GTK_WIDGET (owner), error != NULL ? error->message : NULL);
}

static void
undo_clicked_cb (AdwToast *toast, Removal *self)
{
  g_autoptr (GtkWidget) owner = g_weak_ref_get (&self->owner);

  if (owner != NULL)
    start (owner, restore, removal_new (owner, self->session, self->own, self->settled),
           restored_cb);
}

static void
toast_gone_cb (gpointer data, GClosure *closure)
{
  removal_free (data);
}

static void
offer_undo (GtkWidget *owner, const Removal *removed)
{
  GtkWidget *overlay = gtk_widget_get_ancestor (owner, ADW_TYPE_TOAST_OVERLAY);
  g_autofree char *title = g_strdup_printf (_ ("Own entry “%s” removed"), removed->own->name);
  AdwToast *toast;

  if (overlay == NULL)
    return;
  toast = fm_removal_toast_new (title);
  g_signal_connect_data (toast, "button-clicked", G_CALLBACK (undo_clicked_cb),
                         removal_new (owner, removed->session, removed->own, removed->settled),
                         toast_gone_cb, G_CONNECT_DEFAULT);
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (overlay), toast);
}

static void
removed_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  const Removal *self = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;

  if (fm_store_task_finish (result, &error) != NULL)
    offer_undo (GTK_WIDGET (owner), self);
  self->settled (GTK_WIDGET (owner), error != NULL ? error->message : NULL);
}

gboolean
fm_own_removal_is_offered (GtkWidget *owner)
{
  return gtk_widget_get_ancestor (owner, ADW_TYPE_TOAST_OVERLAY) != NULL;
}

void
fm_own_removal_start (GtkWidget *owner,
                      FmSession *session,
                      FmIngredient *own,
                      FmOwnRemovalSettled settled)
{
  start (owner, remove_own, removal_new (owner, session, own, settled), removed_cb);
}

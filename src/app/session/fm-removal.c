/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-removal.c - removing with a way back */
#include "app/session/fm-removal.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

#define UNDO_SECONDS 10

typedef struct {
  gatomicrefcount ref_count;
  GWeakRef owner;
  FmNotebook *notebook;
  gint64 id;
  FmRemovalFunc remove;
  FmRemovalSettled settled;
  gboolean decided; /* undone, or handed to the thread */
} Removal;

static Removal *
removal_ref (Removal *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

static void
removal_unref (Removal *self)
{
  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_weak_ref_clear (&self->owner);
  fm_notebook_unref (self->notebook);
  g_free (self);
}

static void
tell_owner (Removal *self, gboolean removed, const GError *error)
{
  g_autoptr (GtkWidget) owner = g_weak_ref_get (&self->owner);

  if (owner != NULL)
    self->settled (owner, self->id, removed, error);
}

static gpointer
remove_it (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Removal *self = data;

  return GINT_TO_POINTER (self->remove (notebook, self->id, error));
}

static void
remove_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Removal *self = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  const gboolean removed = fm_store_task_finish (result, &error) != NULL;

  tell_owner (self, removed, error);
  g_application_release (g_application_get_default ());
}

static void
commit (Removal *self)
{
  if (self->decided)
    return;
  self->decided = TRUE;
  /* The window may be going: what was removed must be gone before the program ends. */
  g_application_hold (g_application_get_default ());
  fm_store_task (&(FmStoreTask){
      .notebook = self->notebook,
      .run = remove_it,
      .data = removal_ref (self),
      .free_data = (GDestroyNotify)removal_unref,
      .done = remove_done_cb,
  });
}

static void
undo_clicked_cb (AdwToast *toast, Removal *self)
{
  if (self->decided)
    return;
  self->decided = TRUE;
  tell_owner (self, FALSE, NULL);
}

static void
dismissed_cb (AdwToast *toast, Removal *self)
{
  commit (self);
}

/* Also when the window goes while the toast is shown. */
static void
toast_gone_cb (gpointer data, GClosure *closure)
{
  Removal *self = data;

  commit (self);
  removal_unref (self);
}

static Removal *
removal_new (GtkWidget *owner,
             FmNotebook *notebook,
             gint64 id,
             FmRemovalFunc remove,
             FmRemovalSettled settled)
{
  Removal *self = g_new0 (Removal, 1);

  g_atomic_ref_count_init (&self->ref_count);
  g_weak_ref_init (&self->owner, owner);
  self->notebook = fm_notebook_ref (notebook);
  self->id = id;
  self->remove = remove;
  self->settled = settled;
  return self;
}

AdwToast *
fm_removal_toast_new (const char *title)
{
  AdwToast *toast = adw_toast_new (title);

  adw_toast_set_button_label (toast, _ ("_Undo"));
  adw_toast_set_timeout (toast, UNDO_SECONDS);
  adw_toast_set_priority (toast, ADW_TOAST_PRIORITY_HIGH);
  return toast;
}

void
fm_removal_offer (GtkWidget *owner,
                  const char *title,
                  FmNotebook *notebook,
                  gint64 id,
                  FmRemovalFunc remove,
                  FmRemovalSettled settled)
{
  GtkWidget *overlay = gtk_widget_get_ancestor (owner, ADW_TYPE_TOAST_OVERLAY);
  Removal *self = removal_new (owner, notebook, id, remove, settled);
  AdwToast *toast = fm_removal_toast_new (title);

  g_return_if_fail (overlay != NULL);
  g_signal_connect (toast, "button-clicked", G_CALLBACK (undo_clicked_cb), self);
  g_signal_connect_data (toast, "dismissed", G_CALLBACK (dismissed_cb), self, toast_gone_cb,
                         G_CONNECT_DEFAULT);
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (overlay), toast);
}

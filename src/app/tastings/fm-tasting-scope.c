/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-scope.c - what a planned panel can and cannot show, kept current as the plan changes
 */
#include "app/tastings/fm-tasting-scope.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-widget.h"

struct _FmTastingScope {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *text_label;

  FmTasting *waiting; /* the newest plan, while an older one is worked on; else NULL */
  gboolean working;
};

G_DEFINE_FINAL_TYPE (FmTastingScope, fm_tasting_scope, GTK_TYPE_WIDGET)

static void start (FmTastingScope *self, FmTasting *tasting);

static gpointer
find_outlook (FmNotebook *none, gpointer tasting, GCancellable *cancellable, GError **error)
{
  return fm_tasting_outlook (tasting);
}

static void
outlook_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmTastingScope *self = FM_TASTING_SCOPE (source);
  g_autofree char *text = fm_store_task_finish (result, NULL);

  self->working = FALSE;
  if (self->text_label == NULL)
    return;
  fm_widget_set_label (self->text_label, text);
  if (self->waiting != NULL)
    start (self, g_steal_pointer (&self->waiting));
}

/* (transfer full tasting) */
static void
start (FmTastingScope *self, FmTasting *tasting)
{
  self->working = TRUE;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .run = find_outlook,
      .free_result = g_free,
      .data = tasting,
      .free_data = (GDestroyNotify)fm_tasting_free,
      .done = outlook_done_cb,
  });
}

static void
fm_tasting_scope_dispose (GObject *object)
{
  FmTastingScope *self = FM_TASTING_SCOPE (object);

  g_clear_pointer (&self->waiting, fm_tasting_free);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_SCOPE);
  G_OBJECT_CLASS (fm_tasting_scope_parent_class)->dispose (object);
}

static void
fm_tasting_scope_class_init (FmTastingScopeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_scope_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-scope.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingScope, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingScope, text_label);
}

static void
fm_tasting_scope_init (FmTastingScope *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_scope_show (FmTastingScope *self, const FmTasting *tasting)
{
  g_return_if_fail (FM_IS_TASTING_SCOPE (self));
  g_clear_pointer (&self->waiting, fm_tasting_free);
  if (self->working)
    self->waiting = fm_tasting_copy (tasting);
  else
    start (self, fm_tasting_copy (tasting));
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-page.c - the list of tastings, and one tasting as a page */
#include "app/tastings/fm-tastings-page.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-clock.h"
#include "app/session/fm-tasting-document.h"
#include "app/session/fm-store-task.h"
#include "app/tastings/fm-tasting-list.h"
#include "app/tastings/fm-tasting-query.h"
#include "app/tastings/fm-tasting-sessions-window.h"
#include "app/tastings/fm-tasting-text.h"
#include "app/tastings/fm-tasting-together-window.h"
#include "app/tastings/fm-tasting-view.h"

struct _FmTastingsPage {
  FmLogPage parent_instance;
};

G_DEFINE_FINAL_TYPE (FmTastingsPage, fm_tastings_page, FM_TYPE_LOG_PAGE)

static void
outcome_stored_cb (FmTastingsPage *self, FmStoredDocument *document)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));

  if (session != NULL)
    fm_session_emit_changed (session, FM_CHANGE_TASTING, fm_stored_document_get_id (document));
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_records_page_create (FM_RECORDS_PAGE (widget), NULL);
}

/* The button for it stands beside opened tastings only. */
static void
again_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmStoredDocument *document = fm_records_page_get_document (FM_RECORDS_PAGE (widget));

  if (document != NULL)
    fm_records_page_create (
        FM_RECORDS_PAGE (widget),
        fm_tasting_again (fm_stored_document_get_content (document), fm_clock_now_s ()));
}

static void
sessions_stored_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmSession *session = fm_page_get_session (FM_PAGE (source));
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) ids = fm_store_task_finish (result, &error);
  g_autofree char *text = NULL;

  if (session == NULL)
    return;
  if (ids == NULL) {
    fm_session_message (session, error->message);
    return;
  }
  for (guint i = 0; i < ids->len; i++)
    fm_session_emit_changed (session, FM_CHANGE_TASTING, g_array_index (ids, gint64, i));
  text =
      g_strdup_printf (ngettext ("%u session planned", "%u sessions planned", ids->len), ids->len);
  fm_session_message (session, text);
}

static void
sessions_planned_cb (FmTastingsPage *self, GPtrArray *plans)
{
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_page_get_notebook (FM_PAGE (self)),
      .run = fm_tasting_query_create_all,
      .free_result = (GDestroyNotify)g_array_unref,
      .data = g_ptr_array_ref (plans),
      .free_data = (GDestroyNotify)g_ptr_array_unref,
      .done = sessions_stored_cb,
  });
}

static void
sessions_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmStoredDocument *document = fm_records_page_get_document (FM_RECORDS_PAGE (widget));
  FmTastingSessionsWindow *window;

  if (document == NULL)
    return;
  window = fm_tasting_sessions_window_new (widget, fm_stored_document_get_content (document));
  g_signal_connect_object (window, "planned", G_CALLBACK (sessions_planned_cb), widget,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (window));
}

static void
together_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmSession *session = fm_page_get_session (FM_PAGE (widget));

  if (session != NULL && fm_session_get_notebook (session) != NULL)
    fm_tasting_together_window_show (widget, session);
}

static FmStoredDocument *
fm_tastings_page_take (FmRecordsPage *page, gpointer tasting)
{
  FmTastingDocument *document =
      fm_tasting_document_open_record (fm_page_get_session (FM_PAGE (page)), tasting);

  /* It may have been open before, and not be saved yet. */
  g_signal_handlers_disconnect_by_func (document, outcome_stored_cb, page);
  g_signal_connect_object (document, "outcome-stored", G_CALLBACK (outcome_stored_cb), page,
                           G_CONNECT_SWAPPED);
  return FM_STORED_DOCUMENT (document);
}

static char *
tell_removed (FmStoredDocument *document)
{
  const FmTasting *tasting = fm_stored_document_get_content (document);

  return g_strdup_printf (_ ("“%s” removed"), fm_tasting_text_title (tasting->title));
}

static void
fm_tastings_page_update_actions (FmRecordsPage *page)
{
  FM_RECORDS_PAGE_CLASS (fm_tastings_page_parent_class)->update_actions (page);
  gtk_widget_action_set_enabled (GTK_WIDGET (page), "tastings.again",
                                 fm_page_is_writable (FM_PAGE (page)));
  gtk_widget_action_set_enabled (GTK_WIDGET (page), "tastings.sessions",
                                 fm_page_is_writable (FM_PAGE (page)));
}

static void
define_records (FmRecordsPageClass *klass)
{
  klass->rows = &fm_tasting_log_kind;
  klass->kind = FM_CHANGE_TASTING;
  klass->document_type = FM_TYPE_TASTING_DOCUMENT;
  klass->load = fm_tasting_query_load;
  klass->free_record = (GDestroyNotify)fm_tasting_free;
  klass->take = fm_tastings_page_take;
  klass->create = fm_tasting_query_create;
  klass->free_plan = (GDestroyNotify)fm_tasting_free;
  klass->remove = fm_tastings_remove;
  klass->tell_removed = tell_removed;
  klass->update_actions = fm_tastings_page_update_actions;
}

static void
fm_tastings_page_class_init (FmTastingsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  define_records (FM_RECORDS_PAGE_CLASS (klass));
  FM_LOG_PAGE_CLASS (klass)->new_action = "tastings.new";
  g_type_ensure (FM_TYPE_TASTING_LIST);
  g_type_ensure (FM_TYPE_TASTING_VIEW);
  gtk_widget_class_install_action (widget_class, "tastings.new", NULL, new_action);
  gtk_widget_class_install_action (widget_class, "tastings.again", NULL, again_action);
  gtk_widget_class_install_action (widget_class, "tastings.sessions", NULL, sessions_action);
  gtk_widget_class_install_action (widget_class, "tastings.together", NULL, together_action);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tastings-page.ui");
}

static void
fm_tastings_page_init (FmTastingsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

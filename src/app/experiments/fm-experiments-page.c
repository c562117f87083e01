/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiments-page.c - the log of experiments, and one experiment as a page */
#include "app/experiments/fm-experiments-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/experiments/fm-experiment-list.h"
#include "app/experiments/fm-experiment-query.h"
#include "app/experiments/fm-experiment-view.h"

struct _FmExperimentsPage {
  FmLogPage parent_instance;

  FmExperimentView *view;

  FmExperimentRecord *opened; /* (nullable) what is known of the version of the open experiment */
  GSignalGroup *signals;      /* of its document */
};

G_DEFINE_FINAL_TYPE (FmExperimentsPage, fm_experiments_page, FM_TYPE_LOG_PAGE)

/* Header and nutrition panel tell of the experiment as it was made, as long as it is in view. */
static void
tell_made (FmExperimentsPage *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  g_autoptr (FmStoredDocument) document = g_signal_group_dup_target (self->signals);
  const FmExperiment *experiment;

  if (session == NULL)
    return;
  if (document == NULL || self->opened == NULL || self->opened->formula == NULL ||
      !gtk_widget_get_mapped (GTK_WIDGET (self))) {
    fm_session_set_made (session, NULL);
    return;
  }
  experiment = fm_stored_document_get_content (document);
  fm_session_set_made (
      session, fm_compare_item_new_experiment (
                   experiment->title != NULL ? experiment->title : _ ("Untitled experiment"),
                   self->opened->made_of, NULL, fm_formula_copy (self->opened->formula),
                   fm_experiment_copy (experiment)));
}

/* An experiment of one blend never stays beside another. */
static void
shown_changed_cb (FmExperimentsPage *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));

  if (self->opened != NULL && self->opened->blend_id != 0 && !fm_session_is_reading (session) &&
      self->opened->blend_id != fm_session_get_blend_id (session))
    fm_records_page_close (FM_RECORDS_PAGE (self));
}

static void
follow_blend (FmExperimentsPage *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));

  if (self->opened != NULL && self->opened->blend_id != 0 &&
      self->opened->blend_id != fm_session_get_blend_id (session))
    fm_session_show_blend (session, self->opened->blend_id);
}

static void
photos_changed_cb (FmExperimentsPage *self)
{
  fm_session_emit_changed (fm_page_get_session (FM_PAGE (self)), FM_CHANGE_PHOTO,
                           fm_records_page_get_open_id (FM_RECORDS_PAGE (self)));
}

static void
show_version_cb (FmExperimentsPage *self)
{
  if (self->opened != NULL)
    fm_session_show_version (fm_page_get_session (FM_PAGE (self)), self->opened->version_id);
}

static void
create_experiment (FmExperimentsPage *self, FmExperimentOrder order)
{
  fm_records_page_create (FM_RECORDS_PAGE (self), g_memdup2 (&order, sizeof order));
}

static void
duplicate_cb (FmExperimentsPage *self)
{
  create_experiment (self, (FmExperimentOrder){
                               .again_id = fm_records_page_get_open_id (FM_RECORDS_PAGE (self)) });
}

static void
draft_response_cb (FmExperimentsPage *self, const char *response)
{
  const gint64 parent_id = fm_session_get_draft_parent (fm_page_get_session (FM_PAGE (self)));

  if (g_str_equal (response, "save"))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.save-version", NULL);
  else if (g_str_equal (response, "parent") && parent_id != 0)
    create_experiment (self, (FmExperimentOrder){ .version_id = parent_id });
}

/* An experiment keeps the version it was made from, so a draft has to become one first. */
static void
explain_draft (FmExperimentsPage *self)
{
  GtkWidget *dialog = adw_message_dialog_new (
      GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _ ("Save the draft first"),
      _ ("An experiment keeps the version it was made from. Save the draft as a version, then "
         "start the experiment from it."));
  AdwMessageDialog *message = ADW_MESSAGE_DIALOG (dialog);

  adw_message_dialog_add_response (message, "cancel", _ ("_Cancel"));
  if (fm_session_get_draft_parent (fm_page_get_session (FM_PAGE (self))) != 0)
    adw_message_dialog_add_response (message, "parent", _ ("Use the version _before it"));
  adw_message_dialog_add_response (message, "save", _ ("_Save version…"));
  adw_message_dialog_set_response_appearance (message, "save", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (message, "save");
  adw_message_dialog_set_close_response (message, "cancel");
  g_signal_connect_object (dialog, "response", G_CALLBACK (draft_response_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* What is shown, where it is a version or a draft that nobody changed since. 0 = a changed draft.
 */
static gint64
find_version (FmSession *session)
{
  const gint64 shown_id = fm_session_get_version_id (session);

  if (shown_id != 0 || fm_session_has_draft_changes (session))
    return shown_id;
  return fm_session_get_draft_parent (session);
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmExperimentsPage *self = FM_EXPERIMENTS_PAGE (widget);
  const gint64 version_id = find_version (fm_page_get_session (FM_PAGE (self)));

  if (version_id != 0)
    create_experiment (self, (FmExperimentOrder){ .version_id = version_id });
  else
    explain_draft (self);
}

static void
photo_changed_cb (FmExperimentsPage *self, const FmChange *change)
{
  fm_log_model_read_row (fm_records_page_get_model (FM_RECORDS_PAGE (self)), change->id);
}

static void
tastings_changed_cb (FmExperimentsPage *self)
{
  fm_experiment_view_read_tastings (self->view);
}

static FmStoredDocument *
fm_experiments_page_take (FmRecordsPage *page, gpointer data)
{
  FmExperimentsPage *self = FM_EXPERIMENTS_PAGE (page);

  g_clear_pointer (&self->opened, fm_experiment_record_free);
  self->opened = data;
  return FM_STORED_DOCUMENT (fm_experiment_document_open (
      fm_page_get_session (FM_PAGE (page)), g_steal_pointer (&self->opened->experiment)));
}

static char *
tell_removed (FmStoredDocument *document)
{
  const FmExperiment *experiment = fm_stored_document_get_content (document);

  return g_strdup_printf (_ ("“%s” removed"), experiment->title != NULL
                                                  ? experiment->title
                                                  : _ ("Untitled experiment"));
}

static void
fm_experiments_page_prepare (FmLogPage *page, FmStoredDocument *document)
{
  FmExperimentsPage *self = FM_EXPERIMENTS_PAGE (page);

  if (document == NULL)
    g_clear_pointer (&self->opened, fm_experiment_record_free);
  fm_experiment_view_set_origin (self->view, fm_page_get_session (FM_PAGE (page)),
                                 self->opened != NULL ? self->opened->origin : NULL,
                                 self->opened != NULL ? self->opened->process : NULL);
  g_signal_group_set_target (self->signals, document);
  follow_blend (self);
  tell_made (self);
}

static void
fm_experiments_page_update_actions (FmRecordsPage *page)
{
  FmSession *session = fm_page_get_session (FM_PAGE (page));

  gtk_widget_action_set_enabled (GTK_WIDGET (page), "experiments.new",
                                 fm_page_is_writable (FM_PAGE (page)) &&
                                     fm_session_get_blend_id (session) != 0);
}

static void
fm_experiments_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (fm_experiments_page_parent_class)->map (widget);
  tell_made (FM_EXPERIMENTS_PAGE (widget));
}

static void
fm_experiments_page_unmap (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (fm_experiments_page_parent_class)->unmap (widget);
  tell_made (FM_EXPERIMENTS_PAGE (widget));
}

static void
fm_experiments_page_dispose (GObject *object)
{
  FmExperimentsPage *self = FM_EXPERIMENTS_PAGE (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_EXPERIMENTS_PAGE);
  g_clear_object (&self->signals);
  g_clear_pointer (&self->opened, fm_experiment_record_free);
  G_OBJECT_CLASS (fm_experiments_page_parent_class)->dispose (object);
}

static void
define_records (FmRecordsPageClass *klass)
{
  klass->rows = &fm_experiment_log_kind;
  klass->kind = FM_CHANGE_EXPERIMENT;
  klass->document_type = FM_TYPE_EXPERIMENT_DOCUMENT;
  klass->load = fm_experiment_query_load;
  klass->free_record = fm_experiment_record_free;
  klass->take = fm_experiments_page_take;
  klass->create = fm_experiment_query_create;
  klass->free_plan = g_free;
  klass->remove = fm_experiments_remove;
  klass->tell_removed = tell_removed;
  klass->update_actions = fm_experiments_page_update_actions;
}

static void
fm_experiments_page_class_init (FmExperimentsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiments_page_dispose;
  widget_class->map = fm_experiments_page_map;
  widget_class->unmap = fm_experiments_page_unmap;
  define_records (FM_RECORDS_PAGE_CLASS (klass));
  FM_LOG_PAGE_CLASS (klass)->prepare = fm_experiments_page_prepare;
  g_type_ensure (FM_TYPE_EXPERIMENT_LIST);
  g_type_ensure (FM_TYPE_EXPERIMENT_VIEW);
  gtk_widget_class_install_action (widget_class, "experiments.new", NULL, new_action);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiments-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FmExperimentsPage, view);
  gtk_widget_class_bind_template_callback (widget_class, photos_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_version_cb);
  gtk_widget_class_bind_template_callback (widget_class, duplicate_cb);
}

static void
fm_experiments_page_init (FmExperimentsPage *self)
{
  self->signals = g_signal_group_new (FM_TYPE_STORED_DOCUMENT);
  g_signal_group_connect_swapped (self->signals, "changed", G_CALLBACK (tell_made), self);
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_page_listen (FM_PAGE (self), "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::photo", G_CALLBACK (photo_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::tasting", G_CALLBACK (tastings_changed_cb));
}

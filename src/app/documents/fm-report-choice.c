/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-report-choice.c - the experiments that go into the development report of a blend */
#include "app/documents/fm-report-choice.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/documents/fm-sheet-window.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-date.h"
#include "report/fm-development-report.h"

/* Of those with a photo or a rating, best first: as many as a page holds. */
#define N_AT_FIRST 3
#define ID_KEY "fm-experiment-id"

struct _FmReportChoice {
  GtkWidget parent_instance;

  AdwPreferencesGroup *group;
  GtkLabel *none_label;

  GPtrArray *checks; /* GtkCheckButton with its experiment */
  gint64 blend_id;
  char *blend_name;
  char *notebook_name;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmReportChoice, fm_report_choice, GTK_TYPE_WIDGET)

typedef struct {
  FmDevelopmentReportInput input;
  char *blend_name;
  char *notebook_name;
  char *date;
  GArray *experiments;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_free (order->blend_name);
  g_free (order->notebook_name);
  g_free (order->date);
  g_array_unref (order->experiments);
  g_free (order);
}

static gpointer
new_order (GtkWidget *options)
{
  FmReportChoice *self = FM_REPORT_CHOICE (options);
  Order *order;

  if (self->loading)
    return NULL;
  order = g_new0 (Order, 1);
  order->blend_name = g_strdup (self->blend_name);
  order->notebook_name = g_strdup (self->notebook_name);
  order->date = fm_date_today ();
  order->experiments = g_array_new (FALSE, FALSE, sizeof (gint64));
  for (guint i = 0; i < self->checks->len; i++) {
    const gint64 *id = g_object_get_data (self->checks->pdata[i], ID_KEY);

    if (gtk_check_button_get_active (self->checks->pdata[i]))
      g_array_append_val (order->experiments, *id);
  }
  order->input =
      (FmDevelopmentReportInput){ self->blend_id, order->blend_name, order->notebook_name,
                                  order->date, order->experiments };
  return order;
}

static gpointer
make_report (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  return fm_development_report_new (notebook, &((const Order *)data)->input, cancellable, error);
}

static void
check_toggled_cb (FmReportChoice *self)
{
  if (!self->loading)
    gtk_widget_activate_action (GTK_WIDGET (self), "sheet.renew", NULL);
}

static char *
row_subtitle (const FmExperimentInfo *info)
{
  g_autofree char *day = fm_date_text (info->made_at);
  g_autofree char *photos =
      g_strdup_printf (ngettext ("%u photo", "%u photos", info->n_photos), info->n_photos);

  if (info->rating == 0)
    /* TRANSLATORS: number of a version, day, "2 photos" */
    return g_strdup_printf (_ ("Version %d, %s, %s"), info->version_number, day, photos);
  /* TRANSLATORS: number of a version, day, "2 photos", rating */
  return g_strdup_printf (_ ("Version %d, %s, %s, rated %d of 10"), info->version_number, day,
                          photos, info->rating);
}

static void
add_row (FmReportChoice *self, const FmExperimentInfo *info, gboolean chosen)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *check = gtk_check_button_new ();
  const char *title = info->title != NULL ? info->title : _ ("untitled");
  g_autofree char *subtitle = row_subtitle (info);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), chosen);
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  g_object_set_data_full (G_OBJECT (check), ID_KEY, g_memdup2 (&info->id, sizeof info->id), g_free);
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), check);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), check);
  g_signal_connect_object (check, "toggled", G_CALLBACK (check_toggled_cb), self,
                           G_CONNECT_SWAPPED);
  g_ptr_array_add (self->checks, check);
  adw_preferences_group_add (self->group, row);
}

static gpointer
read_experiments (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const FmExperimentFilter filter = { .blend_id = *(gint64 *)data,
                                      .sort = FM_EXPERIMENT_SORT_RATING,
                                      .descending = TRUE };

  return fm_experiments_list (notebook, &filter, cancellable, error);
}

static void
experiments_read_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmReportChoice *self = FM_REPORT_CHOICE (owner);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) infos = fm_store_task_finish (result, &error);
  guint n_chosen = 0;

  if (self->group == NULL)
    return;
  for (guint i = 0; infos != NULL && i < infos->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (infos, i);
    const gboolean chosen = n_chosen < N_AT_FIRST && (info->rating > 0 || info->n_photos > 0);

    n_chosen += chosen;
    add_row (self, info, chosen);
  }
  if (infos == NULL)
    gtk_label_set_text (self->none_label, error->message);
  gtk_widget_set_visible (GTK_WIDGET (self->none_label), infos == NULL || infos->len == 0);
  self->loading = FALSE;
  gtk_widget_activate_action (GTK_WIDGET (self), "sheet.renew", NULL);
}

static void
fm_report_choice_dispose (GObject *object)
{
  FmReportChoice *self = FM_REPORT_CHOICE (object);

  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_REPORT_CHOICE);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  g_clear_pointer (&self->blend_name, g_free);
  g_clear_pointer (&self->notebook_name, g_free);
  G_OBJECT_CLASS (fm_report_choice_parent_class)->dispose (object);
}

static void
fm_report_choice_class_init (FmReportChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_report_choice_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/documents/fm-report-choice.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmReportChoice, group);
  gtk_widget_class_bind_template_child (widget_class, FmReportChoice, none_label);
}

static void
fm_report_choice_init (FmReportChoice *self)
{
  self->loading = TRUE;
  self->checks = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

static FmReportChoice *
report_choice_new (FmSession *session)
{
  FmNotebook *notebook = fm_session_get_notebook (session);
  FmReportChoice *self = g_object_new (FM_TYPE_REPORT_CHOICE, NULL);

  self->blend_id = fm_session_get_blend_id (session);
  self->blend_name = g_strdup (fm_session_get_blend_name (session));
  self->notebook_name = g_filename_display_basename (fm_notebook_path (notebook));
  return self;
}

void
fm_report_choice_present (GtkWidget *parent, FmSession *session)
{
  FmReportChoice *self = report_choice_new (session);
  /* TRANSLATORS: title of a window: name of the blend */
  g_autofree char *title = g_strdup_printf (_ ("Development Report: %s"), self->blend_name);

  fm_sheet_window_present (parent, &(FmSheetOrder){
                                       .title = title,
                                       .session = session,
                                       .options = GTK_WIDGET (self),
                                       .make = make_report,
                                       .new_order = new_order,
                                       .free_order = order_free,
                                   });
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (session),
      .run = read_experiments,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .data = g_memdup2 (&self->blend_id, sizeof self->blend_id),
      .free_data = g_free,
      .done = experiments_read_cb,
  });
}

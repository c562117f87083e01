/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-list.c - the log: filter, list and what is said when it is empty */
#include "app/experiments/fm-experiment-list.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/experiments/fm-experiment-filter-bar.h"
#include "app/experiments/fm-experiment-query.h"
#include "app/photos/fm-photo-thumbnails.h"
#include "core/base/fm-date.h"
#include "core/base/fm-number.h"

struct _FmExperimentList {
  FmLogList parent_instance;

  FmExperimentFilterBar *filter_bar;

  FmPhotoThumbnails *thumbnails;
};

G_DEFINE_FINAL_TYPE (FmExperimentList, fm_experiment_list, FM_TYPE_LOG_LIST)

static void
append_part (GString *text, const char *part)
{
  g_autofree char *escaped = g_markup_escape_text (part, -1);

  if (text->len > 0)
    g_string_append (text, " · ");
  g_string_append (text, escaped);
}

static void
append_numbers (GString *text, const FmExperimentInfo *info)
{
  if (info->rating > 0) {
    g_autofree char *rating = g_strdup_printf (_ ("%d of 10"), info->rating);

    append_part (text, rating);
  }
  if (!isnan (info->cook_loss_pct)) {
    g_autofree char *number = fm_number_format_unit (info->cook_loss_pct, 1, "%");
    g_autofree char *loss = g_strdup_printf (_ ("loss %s"), number);

    append_part (text, loss);
  }
  if (info->n_photos > 0) {
    g_autofree char *photos =
        g_strdup_printf (ngettext ("%u photo", "%u photos", info->n_photos), info->n_photos);

    append_part (text, photos);
  }
}

/* Three lines: the title, the version, then date, rating, loss and photos in words. */
static char *
row_markup (gconstpointer data)
{
  const FmExperimentInfo *info = data;
  g_autofree char *date = fm_date_text (info->made_at);
  g_autofree char *version = g_strdup_printf (
      /* Translators: version number, then blend name */
      _ ("Version %d · %s"), info->version_number,
      info->blend_name != NULL ? info->blend_name : "");
  g_autofree char *title = NULL;
  g_autoptr (GString) facts = g_string_new (NULL);
  g_autoptr (GString) origin = g_string_new (NULL);

  if (info->title != NULL && info->title[0] != '\0')
    title = g_markup_escape_text (info->title, -1);
  else
    title = g_markup_escape_text (_ ("Untitled experiment"), -1);
  append_part (facts, date);
  append_numbers (facts, info);
  append_part (origin, version);
  return g_strdup_printf ("<b>%s</b>\n<small>%s\n%s</small>", title, origin->str, facts->str);
}

/* The first photo of an experiment. */
static void
show_picture (FmLogList *list, gconstpointer data, GtkImage *image)
{
  const FmExperimentInfo *info = data;
  const gint64 photo_id = info != NULL ? info->first_photo_id : 0;

  gtk_widget_set_visible (GTK_WIDGET (image), photo_id != 0);
  fm_photo_thumbnails_show (FM_EXPERIMENT_LIST (list)->thumbnails, photo_id, image);
}

static char *
count_text (guint n)
{
  return g_strdup_printf (ngettext ("%u experiment", "%u experiments", n), n);
}

static gpointer
fm_experiment_list_query (FmLogList *list, FmSession *session)
{
  FmExperimentFilter filter;

  fm_photo_thumbnails_set_notebook (FM_EXPERIMENT_LIST (list)->thumbnails,
                                    fm_session_get_notebook (session));
  fm_experiment_filter_bar_get_filter (FM_EXPERIMENT_LIST (list)->filter_bar, session, &filter);
  return fm_experiment_query_copy_filter (&filter);
}

static gboolean
fm_experiment_list_is_filtering (FmLogList *list)
{
  return fm_experiment_filter_bar_is_filtering (FM_EXPERIMENT_LIST (list)->filter_bar);
}

static void
fm_experiment_list_reset_filter (FmLogList *list)
{
  fm_experiment_filter_bar_reset (FM_EXPERIMENT_LIST (list)->filter_bar);
}

static void
fm_experiment_list_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_EXPERIMENT_LIST);
  G_OBJECT_CLASS (fm_experiment_list_parent_class)->dispose (object);
}

static void
fm_experiment_list_finalize (GObject *object)
{
  g_clear_object (&FM_EXPERIMENT_LIST (object)->thumbnails);
  G_OBJECT_CLASS (fm_experiment_list_parent_class)->finalize (object);
}

static void
fm_experiment_list_class_init (FmExperimentListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  FmLogListClass *list_class = FM_LOG_LIST_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_list_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_experiment_list_finalize;
  list_class->markup = row_markup;
  list_class->show_picture = show_picture;
  list_class->count_text = count_text;
  list_class->query = fm_experiment_list_query;
  list_class->is_filtering = fm_experiment_list_is_filtering;
  list_class->reset_filter = fm_experiment_list_reset_filter;
  g_type_ensure (FM_TYPE_EXPERIMENT_FILTER_BAR);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-list.ui");
  gtk_widget_class_bind_template_child (widget_class, FmExperimentList, filter_bar);
  gtk_widget_class_bind_template_callback (widget_class, fm_log_list_query_changed);
}

static void
fm_experiment_list_init (FmExperimentList *self)
{
  self->thumbnails = fm_photo_thumbnails_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

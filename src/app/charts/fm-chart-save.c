/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-save.c - the picture of a chart into a file that somebody chooses */
#include "app/charts/fm-chart-save.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-page.h"

typedef struct {
  FmChart *chart;
  FmChartFormat format;
} Save;

static void
save_free (Save *self)
{
  g_object_unref (self->chart);
  g_free (self);
}

static FmSession *
session_of (FmChart *chart)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (chart), FM_TYPE_PAGE);

  return page != NULL ? fm_page_get_session (FM_PAGE (page)) : NULL;
}

static void
tell_failure (FmChart *chart, GFile *file, const GError *error)
{
  g_autofree char *name = g_file_get_parse_name (file);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (chart));
  GtkWidget *dialog = adw_message_dialog_new (root != NULL ? GTK_WINDOW (root) : NULL,
                                              _ ("The Picture Was Not Saved"), NULL);

  adw_message_dialog_format_body (
      ADW_MESSAGE_DIALOG (dialog),
      /* Translators: the name of a file, what went wrong. */
      _ ("“%s” could not be written: %s. Choose another place, or make room, and save it again."),
      name, error->message);
  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmChart) chart = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_file_get_parse_name (G_FILE (source));
  g_autofree char *text = g_strdup_printf (_ ("Picture saved as “%s”"), name);

  if (!g_file_replace_contents_finish (G_FILE (source), result, NULL, &error))
    tell_failure (chart, G_FILE (source), error);
  else if (session_of (chart) != NULL)
    fm_session_message (session_of (chart), text);
}

static void
draw_cb (gpointer data, FmChartCanvas *canvas)
{
  fm_chart_draw (data, canvas);
}

static GBytes *
make_picture (FmChart *chart, FmChartFormat format, GError **error)
{
  const char *notice = fm_notebook_notice ();
  g_autofree char *subject = fm_chart_dup_subject (chart);
  g_autofree char *words = subject != NULL && notice != NULL
                               ? g_strdup_printf ("%s\n%s", subject, notice)
                               : g_strdup (subject != NULL ? subject : notice);
  FmChartPicture picture = {
    .title = fm_chart_get_title (chart),
    .legend = fm_chart_get_legend (chart),
    .subject = words,
    .pango = gtk_widget_get_pango_context (GTK_WIDGET (chart)),
    .draw = draw_cb,
    .data = chart,
  };

  fm_chart_get_canvas_size (chart, &picture.width, &picture.height);
  return fm_chart_picture_make (&picture, format, error);
}

static void
write_picture (const Save *self, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *name = g_file_get_basename (file);
  FmChartFormat format = self->format;

  fm_chart_format_of_name (name, &format);
  bytes = make_picture (self->chart, format, &error);
  if (bytes == NULL)
    tell_failure (self->chart, file, error);
  else
    g_file_replace_contents_bytes_async (file, bytes, NULL, FALSE, G_FILE_CREATE_NONE, NULL,
                                         written_cb, g_object_ref (self->chart));
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, Save *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));

  if (response == GTK_RESPONSE_ACCEPT && file != NULL)
    write_picture (self, file);
  save_free (self);
  g_object_unref (dialog);
}

void
fm_chart_save (FmChart *self, FmChartFormat format)
{
  GtkFileChooserNative *chooser;
  g_autofree char *subject = NULL;
  g_autofree char *name = NULL;
  Save *save;

  g_return_if_fail (FM_IS_CHART (self));
  subject = fm_chart_dup_subject (self);
  name = fm_chart_picture_name (fm_chart_get_title (self), subject, format);
  save = g_new0 (Save, 1);
  save->chart = g_object_ref (self);
  save->format = format;
  chooser = gtk_file_chooser_native_new (_ ("Save Picture"),
                                         GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                                         GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  /* The dialog lives until it is answered. */
  g_signal_connect (chooser, "response", G_CALLBACK (chosen_cb), save);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-drag.c - a photo is dragged out of the window as a file */
#include "app/photos/fm-photo-drag.h"

#include "app/photos/fm-photo-content.h"

typedef struct {
  FmNotebook *notebook;
  const FmPhotoInfo *info;
  GtkPicture *picture; /* part of the widget that has this */
} Dragged;

static void
dragged_free (gpointer data, GClosure *closure)
{
  Dragged *dragged = data;

  fm_notebook_unref (dragged->notebook);
  g_free (dragged);
}

/* A file that was dropped is read at some later time, so files stay until the program ends. */
static void
clean_up_at_the_end (void)
{
  static gsize asked;

  if (!g_once_init_enter (&asked))
    return;
  g_signal_connect (g_application_get_default (), "shutdown",
                    G_CALLBACK (fm_photo_content_clean_up), NULL);
  g_once_init_leave (&asked, 1);
}

static GdkContentProvider *
prepare_cb (GtkDragSource *source, double x, double y, const Dragged *dragged)
{
  clean_up_at_the_end ();
  return fm_photo_content_new (dragged->notebook, dragged->info);
}

static void
drag_begin_cb (GtkDragSource *source, GdkDrag *drag, const Dragged *dragged)
{
  GdkPaintable *paintable = gtk_picture_get_paintable (dragged->picture);

  if (paintable != NULL)
    gtk_drag_source_set_icon (source, paintable, 0, 0);
}

void
fm_photo_drag_install (GtkWidget *widget,
                       FmNotebook *notebook,
                       const FmPhotoInfo *info,
                       GtkPicture *picture)
{
  GtkDragSource *source = gtk_drag_source_new ();
  Dragged *dragged = g_new0 (Dragged, 1);

  dragged->notebook = fm_notebook_ref (notebook);
  dragged->info = info;
  dragged->picture = picture;
  gtk_drag_source_set_actions (source, GDK_ACTION_COPY);
  /* Ahead of the button, which would take the press for itself. */
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (source), GTK_PHASE_CAPTURE);
  g_signal_connect_data (source, "prepare", G_CALLBACK (prepare_cb), dragged, dragged_free, 0);
  g_signal_connect (source, "drag-begin", G_CALLBACK (drag_begin_cb), dragged);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (source));
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-place.c - what the window says when the file of its notebook has left its name */
#include <glib/gi18n-lib.h>

#include "app/window/fm-window-private.h"

static char *
describe_moved (const FmNotebookPlace *place, const char *name)
{
  g_autofree char *now = g_filename_display_name (place->path);

  if (place->is_replaced)
    return g_strdup_printf (
        _ ("Another file took the name “%s” while the notebook was open here. The notebook itself "
           "is “%s” now. Nothing is saved until you open it there or save it elsewhere."),
        name, now);
  return g_strdup_printf (_ ("“%s” was renamed or moved while it was open here; it is “%s” now. "
                             "Nothing is saved until you open it there or save it elsewhere."),
                          name, now);
}

char *
fm_window_describe_place (FmWindow *self)
{
  const FmNotebookPlace *place = fm_session_get_place (self->session);
  g_autofree char *name = NULL;

  if (place == NULL)
    return NULL;
  name = g_filename_display_basename (fm_notebook_path (fm_session_get_notebook (self->session)));
  if (place->path != NULL)
    return describe_moved (place, name);
  if (place->has_name)
    return g_strdup_printf (_ ("“%s” was moved to an unknown place while it was open here. Nothing "
                               "is saved until you save it elsewhere."),
                            name);
  if (place->is_replaced)
    return g_strdup_printf (
        _ ("“%s” was replaced by another file while it was open here, perhaps by a program that "
           "keeps folders alike. What you see is in this window alone, and nothing is saved until "
           "you save it elsewhere."),
        name);
  return g_strdup_printf (_ ("“%s” was deleted while it was open here. What you see is in this "
                             "window alone, and nothing is saved until you save it elsewhere."),
                          name);
}

void
fm_window_update_place (FmWindow *self)
{
  const FmNotebookPlace *place = fm_session_get_place (self->session);
  g_autofree char *text = fm_window_describe_place (self);

  /* A screen reader reads a label on after its bar has closed. */
  gtk_label_set_text (self->place_label, text != NULL ? text : "");
  gtk_revealer_set_reveal_child (self->place_revealer, text != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->place_follow_button),
                          place != NULL && place->path != NULL);
}

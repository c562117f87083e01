/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/widgets/fm-text-room.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/base/fm-number.h"

typedef struct {
  GtkTextView *view; /* not owned: it owns the buffer, whose handler this belongs to */
  int max_bytes;
  int max_lines;
} Room;

static void
free_room (gpointer room, GClosure *closure)
{
  g_free (room);
}

static void
tell (const Room *room)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (room->view));
  g_autofree char *bytes = fm_number_format (room->max_bytes, 0);
  g_autofree char *lines = fm_number_format (room->max_lines, 0);
  /* TRANSLATORS: Both are numbers. */
  g_autofree char *body =
      g_strdup_printf (_ ("There is room for %s characters in %s lines. What was there before is "
                          "unchanged; add a shorter piece."),
                       bytes, lines);
  GtkWidget *dialog = adw_message_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL,
                                              _ ("This Text Is Too Long"), body);

  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}

static int
count_lines (const char *text, int n_bytes)
{
  const char *end = text + n_bytes;
  int n_lines = 0;

  for (const char *at = text; (at = memchr (at, '\n', (gsize)(end - at))) != NULL; at++)
    n_lines++;
  return n_lines;
}

/* Characters count here: a buffer knows them without a look at its text. */
static void
insert_text_cb (
    GtkTextBuffer *buffer, GtkTextIter *location, const char *text, int n_bytes, gpointer data)
{
  const Room *room = data;
  const int size = n_bytes < 0 ? (int)strlen (text) : n_bytes;

  if (gtk_text_buffer_get_char_count (buffer) + (gint64)size <= room->max_bytes &&
      gtk_text_buffer_get_line_count (buffer) + (gint64)count_lines (text, size) <= room->max_lines)
    return;
  g_signal_stop_emission_by_name (buffer, "insert-text");
  tell (room);
}

void
fm_text_room_limit (GtkTextView *view, int max_bytes, int max_lines)
{
  Room *room = g_new (Room, 1);

  *room = (Room){ view, max_bytes, max_lines };
  g_signal_connect_data (gtk_text_view_get_buffer (view), "insert-text",
                         G_CALLBACK (insert_text_cb), room, free_room, 0);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-line-sight.c - which lines of a long formula are in view */
#include "app/formula/fm-line-sight.h"

#include "app/formula/fm-formula-line-row.h"
#include "app/widgets/fm-widget.h"

#define MARGIN 2           /* rows beyond each edge that count as seen: the focus moves there */
#define CATCH_UP_MS 200    /* after the last keystroke */
#define CATCH_UP_AT_ONCE 4 /* rows, so that the loop stays free */

struct _FmLineSight {
  GtkScrolledWindow *scroller;
  GtkListBox *list;
  guint catch_up_id;
  int next; /* row that catches up next */
};

static gboolean
find_edges (FmLineSight *self, int *first, int *last)
{
  double top = 0.0;
  double bottom = 0.0;
  const double height = gtk_widget_get_height (GTK_WIDGET (self->scroller));
  GtkListBoxRow *row;

  if (height <= 0.0 ||
      !fm_widget_height_in (GTK_WIDGET (self->scroller), GTK_WIDGET (self->list), 0.0, &top))
    return FALSE;
  bottom = top + height;
  row = gtk_list_box_get_row_at_y (self->list, MAX (0, (int)top));
  *first = row != NULL ? gtk_list_box_row_get_index (row) - MARGIN : G_MAXINT;
  row = gtk_list_box_get_row_at_y (self->list, (int)bottom);
  *last = row != NULL ? gtk_list_box_row_get_index (row) + MARGIN : G_MAXINT;
  if (bottom < 0.0)
    *last = -1;
  return TRUE;
}

static gboolean
catch_up_cb (gpointer data)
{
  FmLineSight *self = data;

  for (guint i = 0; i < CATCH_UP_AT_ONCE; i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, self->next);

    if (row == NULL) {
      self->catch_up_id = 0;
      return G_SOURCE_REMOVE;
    }
    fm_formula_line_row_catch_up (FM_FORMULA_LINE_ROW (row));
    self->next++;
  }
  return G_SOURCE_CONTINUE;
}

static gboolean
paused_cb (gpointer data)
{
  FmLineSight *self = data;

  self->next = 0;
  self->catch_up_id = g_idle_add (catch_up_cb, self);
  return G_SOURCE_REMOVE;
}

FmLineSight *
fm_line_sight_new (GtkScrolledWindow *scroller, GtkListBox *list)
{
  FmLineSight *self = g_new0 (FmLineSight, 1);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (scroller);

  self->scroller = scroller;
  self->list = list;
  g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (fm_line_sight_look), self);
  g_signal_connect_swapped (adjustment, "changed", G_CALLBACK (fm_line_sight_look), self);
  return self;
}

void
fm_line_sight_free (FmLineSight *self)
{
  if (self == NULL)
    return;
  g_clear_handle_id (&self->catch_up_id, g_source_remove);
  g_signal_handlers_disconnect_by_data (gtk_scrolled_window_get_vadjustment (self->scroller), self);
  g_free (self);
}

void
fm_line_sight_look (FmLineSight *self)
{
  int first = 0;
  int last = G_MAXINT;
  GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->list));

  if (!find_edges (self, &first, &last))
    return;
  for (int i = 0; row != NULL; row = gtk_widget_get_next_sibling (row)) {
    if (!FM_IS_FORMULA_LINE_ROW (row))
      continue;
    fm_formula_line_row_set_seen (FM_FORMULA_LINE_ROW (row), i >= first && i <= last);
    i++;
  }
}

void
fm_line_sight_catch_up_soon (FmLineSight *self)
{
  g_clear_handle_id (&self->catch_up_id, g_source_remove);
  self->catch_up_id = g_timeout_add (CATCH_UP_MS, paused_cb, self);
}

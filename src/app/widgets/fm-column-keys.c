/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-column-keys.c - keys that go through the rows of a list as through a table */
#include "app/widgets/fm-column-keys.h"

typedef struct {
  GtkWidget *list; /* owns this */
  FmColumnCell cell;
  guint n_columns;
  guint n_numbers;
} Keys;

/* Where the focus is. */
typedef struct {
  GtkWidget *row;
  guint column;
} Place;

static gboolean
find_place (const Keys *keys, Place *place)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (keys->list));
  GtkWidget *row = focus;

  while (row != NULL && gtk_widget_get_parent (row) != keys->list)
    row = gtk_widget_get_parent (row);
  if (row == NULL)
    return FALSE;
  for (guint column = 0; column < keys->n_columns; column++) {
    GtkWidget *cell = keys->cell (row, column);

    if (cell != NULL && (focus == cell || gtk_widget_is_ancestor (focus, cell))) {
      *place = (Place){ row, column };
      return TRUE;
    }
  }
  return FALSE;
}

static GtkWidget *
neighbour (GtkWidget *row, gboolean forward)
{
  return forward ? gtk_widget_get_next_sibling (row) : gtk_widget_get_prev_sibling (row);
}

/* FALSE at the end of the column. */
static gboolean
go_along (const Keys *keys, GtkWidget *row, guint column, gboolean forward)
{
  for (; row != NULL; row = neighbour (row, forward)) {
    GtkWidget *cell = keys->cell (row, column);

    if (cell != NULL && gtk_widget_get_mapped (cell) &&
        gtk_widget_child_focus (cell, GTK_DIR_TAB_FORWARD))
      return TRUE;
  }
  return FALSE;
}

/* Along the column, then from the other end of the next one; FALSE leaves the list. */
static gboolean
go_on (const Keys *keys, Place place, gboolean forward)
{
  GtkWidget *start =
      forward ? gtk_widget_get_first_child (keys->list) : gtk_widget_get_last_child (keys->list);

  if (go_along (keys, neighbour (place.row, forward), place.column, forward))
    return TRUE;
  while (forward ? place.column + 1 < keys->n_columns : place.column > 0) {
    place.column += forward ? 1 : -1;
    if (go_along (keys, start, place.column, forward))
      return TRUE;
  }
  return FALSE;
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint keyval,
                guint keycode,
                GdkModifierType state,
                gpointer data)
{
  const Keys *keys = data;
  const GdkModifierType held = state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK);
  const gboolean back = (held & GDK_SHIFT_MASK) != 0;
  Place place;

  if ((held & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0 || !find_place (keys, &place))
    return GDK_EVENT_PROPAGATE;
  if (keyval == GDK_KEY_Tab || keyval == GDK_KEY_ISO_Left_Tab)
    return go_on (keys, place, !back && keyval == GDK_KEY_Tab);
  if (back || place.column >= keys->n_numbers)
    return GDK_EVENT_PROPAGATE;
  if (keyval == GDK_KEY_Down || keyval == GDK_KEY_Return || keyval == GDK_KEY_KP_Enter)
    return go_along (keys, neighbour (place.row, TRUE), place.column, TRUE);
  if (keyval == GDK_KEY_Up)
    return go_along (keys, neighbour (place.row, FALSE), place.column, FALSE);
  return GDK_EVENT_PROPAGATE;
}

void
fm_column_keys_install (GtkWidget *list, FmColumnCell cell, guint n_columns, guint n_numbers)
{
  GtkEventController *controller = gtk_event_controller_key_new ();
  Keys *keys = g_new0 (Keys, 1);

  g_return_if_fail (GTK_IS_WIDGET (list) && cell != NULL && n_numbers <= n_columns);

  *keys = (Keys){ .list = list, .cell = cell, .n_columns = n_columns, .n_numbers = n_numbers };
  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_CAPTURE);
  g_signal_connect_data (controller, "key-pressed", G_CALLBACK (key_pressed_cb), keys,
                         (GClosureNotify)(void (*) (void))g_free, 0);
  gtk_widget_add_controller (list, controller);
}

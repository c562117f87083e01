/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-jump.c - the sections of a long page as a small list, and keys that go through them
 */
#include "app/experiments/fm-experiment-jump.h"

#include "app/widgets/fm-widget.h"

typedef struct {
  GtkMenuButton *button;
  GtkScrolledWindow *scroller;
  GArray *sections; /* FmExperimentSection */
} Jump;

static void
jump_free (gpointer data)
{
  Jump *self = data;

  g_array_unref (self->sections);
  g_free (self);
}

static const FmExperimentSection *
get_section (const Jump *self, guint index)
{
  return &g_array_index (self->sections, FmExperimentSection, index);
}

/* What the keyboard is in; the first one where it is in none. */
static guint
find_section (const Jump *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self->button));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  for (guint i = 0; focus != NULL && i < self->sections->len; i++)
    if (gtk_widget_is_ancestor (focus, get_section (self, i)->widget))
      return i;
  return 0;
}

/* The section stands at the top, with the keyboard in its first field. */
static void
go_to (const Jump *self, guint index)
{
  GtkWidget *widget = get_section (self, index)->widget;
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  GtkWidget *content = gtk_scrolled_window_get_child (self->scroller);
  double height;

  gtk_widget_child_focus (widget, GTK_DIR_TAB_FORWARD);
  if (fm_widget_height_in (widget, content, 0, &height))
    gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + height);
}

static void
chosen_cb (Jump *self, GtkWidget *choice)
{
  gtk_menu_button_popdown (self->button);
  go_to (self, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (choice), "section")));
}

static gboolean
key_cb (Jump *self, guint keyval, guint keycode, GdkModifierType state)
{
  const guint now = find_section (self);

  if ((state & (GDK_CONTROL_MASK | GDK_SHIFT_MASK | GDK_ALT_MASK)) != GDK_CONTROL_MASK)
    return GDK_EVENT_PROPAGATE;
  if (gdk_keyval_to_lower (keyval) == GDK_KEY_j)
    gtk_menu_button_popup (self->button);
  else if (keyval == GDK_KEY_Page_Down)
    go_to (self, MIN (now + 1, self->sections->len - 1));
  else if (keyval == GDK_KEY_Page_Up)
    go_to (self, now > 0 ? now - 1 : 0);
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
}

static GtkWidget *
make_list (Jump *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  for (guint i = 0; i < self->sections->len; i++) {
    GtkWidget *choice = gtk_button_new_with_label (get_section (self, i)->name);

    gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (choice))), 0);
    gtk_widget_add_css_class (choice, "flat");
    g_object_set_data (G_OBJECT (choice), "section", GUINT_TO_POINTER (i));
    g_signal_connect_swapped (choice, "clicked", G_CALLBACK (chosen_cb), self);
    gtk_box_append (GTK_BOX (box), choice);
  }
  return box;
}

void
fm_experiment_jump_install (GtkMenuButton *button,
                            GtkWidget *widget,
                            GtkScrolledWindow *scroller,
                            const FmExperimentSection *sections,
                            guint n_sections)
{
  Jump *self = g_new0 (Jump, 1);
  GtkWidget *popover = gtk_popover_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->button = button;
  self->scroller = scroller;
  self->sections = g_array_new (FALSE, FALSE, sizeof (FmExperimentSection));
  g_array_append_vals (self->sections, sections, n_sections);
  g_object_set_data_full (G_OBJECT (button), "jump", self, jump_free);
  gtk_popover_set_child (GTK_POPOVER (popover), make_list (self));
  gtk_menu_button_set_popover (button, popover);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (widget, keys);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-widget.c - what many widgets of ours need */
#include "app/widgets/fm-widget.h"

static void
setup_choice_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_list_item_set_child (list_item, label);
}

static void
bind_choice_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GtkStringObject *choice = gtk_list_item_get_item (list_item);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (list_item)),
                      gtk_string_object_get_string (choice));
}

void
fm_widget_drop_children (GtkWidget *widget)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

void
fm_widget_drop_template (GtkWidget *widget, GType type)
{
  gtk_widget_dispose_template (widget, type);
  fm_widget_drop_children (widget);
}

gboolean
fm_widget_pass_focus (GtkWidget *widget, GtkDirectionType direction)
{
  GtkWidget *child = gtk_widget_get_first_child (widget);

  return child != NULL && gtk_widget_child_focus (child, direction);
}

gboolean
fm_widget_height_in (GtkWidget *widget, GtkWidget *other, double y, double *height)
{
  graphene_point_t there;

  if (!gtk_widget_compute_point (widget, other, &GRAPHENE_POINT_INIT (0.0F, (float)y), &there))
    return FALSE;
  *height = there.y;
  return TRUE;
}

void
fm_widget_clear_box (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

gboolean
fm_widget_has_painted (GtkWidget *widget)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);

  /* Frames count from 0, and the count goes up before a frame is painted. */
  return clock != NULL && gdk_frame_clock_get_frame_counter (clock) > 0;
}

void
fm_widget_ellipsize_drop_down (GtkDropDown *drop_down)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_choice_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_choice_cb), NULL);
  gtk_drop_down_set_factory (drop_down, factory);
}

void
fm_widget_set_class (GtkWidget *widget, const char *css_class, gboolean on)
{
  if (on)
    gtk_widget_add_css_class (widget, css_class);
  else
    gtk_widget_remove_css_class (widget, css_class);
}

void
fm_widget_set_label (GtkLabel *label, const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text) != 0)
    gtk_label_set_text (label, text);
}

void
fm_widget_show_text (GtkEditable *editable, const char *text)
{
  const char *shown = text != NULL ? text : "";

  if (g_str_equal (gtk_editable_get_text (editable), shown))
    return;
  gtk_editable_set_enable_undo (editable, FALSE);
  gtk_editable_set_text (editable, shown);
  gtk_editable_set_enable_undo (editable, TRUE);
}

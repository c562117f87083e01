/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-widget.h - what many widgets of ours need */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** Lets go of all children. In a dispose of a class that others derive from: GTK 4.8 looks for the
 * children of the derived template in the template of the parent, and ends the program. */
void fm_widget_drop_children (GtkWidget *widget);
/**
 * fm_widget_drop_template:
 * Call in dispose: clears the bound children of @widget's template and unparents what is left,
 * which gtk_widget_dispose_template() alone does not do for a plain GtkWidget. Not for rows and
 * windows: they unparent their own child.
 */
void fm_widget_drop_template (GtkWidget *widget, GType type);

/**
 * fm_widget_pass_focus:
 * The "focus" of a widget that takes no focus itself but hands grab_focus on to a part of its only
 * child. The toolkit's own would grab the focus back when it should leave, and never let it go.
 */
gboolean fm_widget_pass_focus (GtkWidget *widget, GtkDirectionType direction);

/** Takes every child out of @box. */
void fm_widget_clear_box (GtkBox *box);

/** TRUE once the window of @widget has painted its first frame. */
gboolean fm_widget_has_painted (GtkWidget *widget);

/**
 * fm_widget_height_in:
 * Where a point @y pixels below the top of @widget lies in @other, in pixels below its top. Returns
 * FALSE when they share no window.
 */
gboolean fm_widget_height_in (GtkWidget *widget, GtkWidget *other, double y, double *height);

/**
 * fm_widget_ellipsize_drop_down:
 * Shortens long choices of a @drop_down of GtkStringObjects; the default label would widen a
 * narrow window to the longest of them.
 */
void fm_widget_ellipsize_drop_down (GtkDropDown *drop_down);

/** Puts the class @css_class on @widget, or takes it off. */
void fm_widget_set_class (GtkWidget *widget, const char *css_class, gboolean on);

/** Shows @text (nullable) where it is another one; what was typed before cannot be typed back. */
void fm_widget_show_text (GtkEditable *editable, const char *text);

/** fm_widget_set_label: sets the text only where it changed, so that a keystroke redraws little. */
void fm_widget_set_label (GtkLabel *label, const char *text);

G_END_DECLS

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-line-row.c - one line of the formula: its entries, figures and buttons */
#include "app/formula/fm-formula-line-row.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/session/fm-formula-line-edit.h"
#include "app/session/fm-ingredient-keep.h"
#include "app/formula/fm-formula-line-layout.h"
#include "app/ingredients/fm-ingredient-dialog.h"
#include "app/widgets/fm-number-entry.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

struct _FmFormulaLineRow {
  GtkListBoxRow parent_instance;

  GtkWidget *lead;
  GtkLabel *name_label;
  GtkLabel *hint_label;
  FmNumberEntry *mass_entry;
  FmNumberEntry *share_entry;
  GtkInscription *patty_text;
  GtkInscription *fat_text;
  FmNumberEntry *price_entry;
  GtkInscription *summary_text;
  GtkToggleButton *lock_button;
  GtkMenuButton *more_button;
  GtkWidget *remove_button;
  GtkLabel *message_label;
  GMenuModel *line_menu;

  FmSession *session;
  FmFormulaLineItem *item;
  FmIngredient *shown_ingredient;
  FmShareRun share_run;
  gboolean loading;
  gboolean lock_shown; /* the button shows "locked_shown"; FALSE at first */
  gboolean locked_shown;
  gboolean unseen; /* scrolled out of view */
  gboolean behind; /* shows older figures than the item has */
};

G_DEFINE_FINAL_TYPE (FmFormulaLineRow, fm_formula_line_row, GTK_TYPE_LIST_BOX_ROW)

/* Before the line id in what a drag carries, so that other dropped text is not mistaken for one. */
#define DRAG_PREFIX "forcemeat-line:"

/* Takes @label. */
static void
set_accessible_label (gpointer widget, char *label)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  -1);
  g_free (label);
}

/* Only when another ingredient is shown: names do not change while numbers are typed. */
static void
show_ingredient (FmFormulaLineRow *self, FmIngredient *ingredient)
{
  g_autofree char *hint = fm_formula_line_item_describe (self->item);
  g_autofree char *mass_name = g_strdup_printf (
      fm_notebook_units ()->us_masses ? _ ("Ounces of %s") : _ ("Grams of %s"), ingredient->name);
  g_autofree char *share_name = g_strdup_printf (_ ("Share of %s"), ingredient->name);
  g_autofree char *price_name = g_strdup_printf (_ ("Price of %s"), ingredient->name);
  g_autofree char *source = fm_ingredient_describe_source (ingredient);

  g_clear_pointer (&self->shown_ingredient, fm_ingredient_unref);
  self->shown_ingredient = fm_ingredient_ref (ingredient);
  gtk_label_set_text (self->name_label, ingredient->name);
  gtk_label_set_text (self->hint_label, hint);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->name_label), source);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->hint_label), hint);
  if (source != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                    source, -1);
  fm_number_entry_set_what (self->mass_entry, mass_name);
  fm_number_entry_set_what (self->share_entry, share_name);
  fm_number_entry_set_what (self->price_entry, price_name);
  set_accessible_label (self, g_strdup (ingredient->name));
  set_accessible_label (self->lock_button, g_strdup_printf (_ ("Lock %s"), ingredient->name));
  set_accessible_label (self->more_button, g_strdup_printf (_ ("More for %s"), ingredient->name));
  set_accessible_label (self->remove_button, g_strdup_printf (_ ("Remove %s"), ingredient->name));
}

static void
set_inscription (GtkInscription *inscription, const char *text)
{
  if (g_strcmp0 (gtk_inscription_get_text (inscription), text) != 0)
    gtk_inscription_set_text (inscription, text);
}

static void
show_summary (FmFormulaLineRow *self, const FmLineFigures *figures)
{
  g_autofree char *patty = fm_notebook_text (FM_MEASURE_MASS, figures->patty_g, 1);
  g_autofree char *batch = fm_notebook_text (FM_MEASURE_MASS, figures->batch_g, 0);
  g_autofree char *fat = fm_notebook_text (FM_MEASURE_MASS, figures->fat_g, 1);
  g_autofree char *text = g_strdup_printf (ngettext ("%s per patty · %s for %d patty · fat %s",
                                                     "%s per patty · %s for %d patties · fat %s",
                                                     (gulong)figures->n_patties),
                                           patty, batch, figures->n_patties, fat);

  set_inscription (self->summary_text, text);
}

static void
show_columns (FmFormulaLineRow *self, const FmLineFigures *figures)
{
  g_autofree char *patty = fm_notebook_cell (FM_MEASURE_MASS, figures->patty_g, 1);
  g_autofree char *fat = fm_notebook_cell (FM_MEASURE_MASS, figures->fat_g, 1);

  set_inscription (self->patty_text, patty);
  set_inscription (self->fat_text, fat);
}

/* Icon and tooltip are dear, and most keystrokes leave them as they are. */
static void
show_lock (FmFormulaLineRow *self, const FmLineFigures *figures)
{
  const char *tooltip = figures->locked ? _ ("Locked: keeps its grams when other shares change")
                                        : _ ("Not locked: gives way when other shares change");

  gtk_widget_set_sensitive (GTK_WIDGET (self->lock_button), figures->editable);
  if (self->lock_shown && gtk_toggle_button_get_active (self->lock_button) == figures->locked &&
      self->locked_shown == figures->locked)
    return;
  self->lock_shown = TRUE;
  self->locked_shown = figures->locked;
  gtk_toggle_button_set_active (self->lock_button, figures->locked);
  gtk_button_set_icon_name (GTK_BUTTON (self->lock_button), figures->locked
                                                                ? "changes-prevent-symbolic"
                                                                : "changes-allow-symbolic");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->lock_button), tooltip);
}

static void
show_editable (FmFormulaLineRow *self, const FmLineFigures *figures)
{
  GtkWidget *widget = GTK_WIDGET (self);

  fm_number_entry_set_editable (self->mass_entry, figures->editable);
  fm_number_entry_set_editable (self->share_entry, figures->editable);
  fm_number_entry_set_editable (self->price_entry, figures->editable);
  gtk_widget_action_set_enabled (widget, "line.remove", figures->editable);
  gtk_widget_action_set_enabled (widget, "line.edit", figures->editable);
  gtk_widget_action_set_enabled (widget, "line.move-up",
                                 figures->editable && figures->position > 0);
  gtk_widget_action_set_enabled (widget, "line.move-down",
                                 figures->editable && figures->position + 1 < figures->n_lines);
}

static void
show_figures (FmFormulaLineRow *self)
{
  const FmLineFigures *figures = fm_formula_line_item_get_figures (self->item);

  self->loading = TRUE;
  if (self->shown_ingredient != figures->ingredient)
    show_ingredient (self, figures->ingredient);
  fm_number_entry_set_value (self->mass_entry, figures->mass_g);
  fm_number_entry_set_value (self->share_entry, figures->share_pct);
  fm_number_entry_set_value (self->price_entry, figures->ingredient->price_per_kg);
  show_columns (self, figures);
  show_summary (self, figures);
  show_lock (self, figures);
  show_editable (self, figures);
  self->loading = FALSE;
  self->behind = FALSE;
}

static void
item_changed_cb (FmFormulaLineRow *self)
{
  if (self->unseen)
    self->behind = TRUE;
  else
    show_figures (self);
}

static void
message_changed_cb (FmFormulaLineRow *self)
{
  const char *message = fm_number_entry_get_message (self->mass_entry);

  if (message == NULL)
    message = fm_number_entry_get_message (self->share_entry);
  if (message == NULL)
    message = fm_number_entry_get_message (self->price_entry);
  gtk_label_set_text (self->message_label, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), message != NULL);
}

/* The name of the entry of the mass has the unit. */
static void
settings_changed_cb (FmFormulaLineRow *self)
{
  g_clear_pointer (&self->shown_ingredient, fm_ingredient_unref);
  item_changed_cb (self);
}

static void
mass_changed_cb (FmFormulaLineRow *self, double mass_g)
{
  g_autoptr (GError) error = NULL;

  if (!self->loading &&
      !fm_line_edit_mass (self->session, fm_formula_line_row_get_line_id (self), mass_g, &error))
    fm_number_entry_refuse (self->mass_entry, error->message);
}

static void
share_changed_cb (FmFormulaLineRow *self, double share_pct)
{
  g_autoptr (GError) error = NULL;

  if (!self->loading && !fm_line_edit_share (self->session, fm_formula_line_row_get_line_id (self),
                                             share_pct, &self->share_run, &error))
    fm_number_entry_refuse (self->share_entry, error->message);
}

static void
price_changed_cb (FmFormulaLineRow *self, double price_per_kg)
{
  g_autoptr (GError) error = NULL;

  if (!self->loading && !fm_line_edit_price (self->session, fm_formula_line_row_get_line_id (self),
                                             price_per_kg, &error))
    fm_number_entry_refuse (self->price_entry, error->message);
}

/* A price on the way to another is none that was ever paid: the history gets what was left. */
static void
price_left_cb (FmFormulaLineRow *self)
{
  const FmLineFigures *figures = fm_formula_line_item_get_figures (self->item);

  if (figures->editable)
    fm_ingredient_keep (self->session, figures->ingredient, FALSE);
}

static void
lock_toggled_cb (FmFormulaLineRow *self)
{
  if (!self->loading)
    fm_line_edit_lock (self->session, fm_formula_line_row_get_line_id (self),
                       gtk_toggle_button_get_active (self->lock_button));
}

static void
more_popup_cb (GtkMenuButton *button, gpointer data)
{
  FmFormulaLineRow *self = data;

  if (gtk_menu_button_get_popover (button) == NULL)
    gtk_menu_button_set_popover (button, gtk_popover_menu_new_from_model (self->line_menu));
}

/* A moved line gets a new row: give it the focus that the old one had. */
static void
focus_line (GtkWidget *list, const char *id)
{
  GtkWidget *child = gtk_widget_get_first_child (list);

  for (; child != NULL; child = gtk_widget_get_next_sibling (child)) {
    if (FM_IS_FORMULA_LINE_ROW (child) &&
        g_str_equal (fm_formula_line_row_get_line_id (FM_FORMULA_LINE_ROW (child)), id))
      fm_formula_line_row_focus_mass (FM_FORMULA_LINE_ROW (child));
  }
}

static void
move_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  g_autoptr (FmFormulaLineRow) self = g_object_ref (FM_FORMULA_LINE_ROW (widget));
  GtkWidget *list = gtk_widget_get_parent (widget);
  g_autofree char *id = g_strdup (fm_formula_line_row_get_line_id (self));

  fm_line_edit_shift (self->session, id, g_str_has_suffix (action_name, "up") ? -1 : 1);
  if (list != NULL)
    focus_line (list, id);
}

static void
remove_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  g_autoptr (FmFormulaLineRow) self = g_object_ref (FM_FORMULA_LINE_ROW (widget));

  fm_line_edit_remove (self->session, fm_formula_line_row_get_line_id (self));
}

static void
edit_cb (GtkWidget *widget, const char *action_name, GVariant *parameter)
{
  FmFormulaLineRow *self = FM_FORMULA_LINE_ROW (widget);
  const FmLineFigures *figures = fm_formula_line_item_get_figures (self->item);

  fm_ingredient_dialog_present (widget, self->session, figures->id, figures->ingredient);
}

static GdkContentProvider *
drag_prepare_cb (FmFormulaLineRow *self, double x, double y)
{
  const FmLineFigures *figures = fm_formula_line_item_get_figures (self->item);
  g_autofree char *text = NULL;

  if (!figures->editable)
    return NULL;
  text = g_strconcat (DRAG_PREFIX, figures->id, NULL);
  return gdk_content_provider_new_typed (G_TYPE_STRING, text);
}

static gboolean
drop_cb (FmFormulaLineRow *self, const GValue *value)
{
  g_autoptr (FmFormulaLineRow) keep = g_object_ref (self);
  const char *text = g_value_get_string (value);

  if (text == NULL || !g_str_has_prefix (text, DRAG_PREFIX))
    return FALSE;
  fm_line_edit_move_to (self->session, text + strlen (DRAG_PREFIX),
                        fm_formula_line_row_get_line_id (self));
  return TRUE;
}

static void
install_drag (FmFormulaLineRow *self)
{
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_STRING, GDK_ACTION_MOVE);

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect_swapped (source, "prepare", G_CALLBACK (drag_prepare_cb), self);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (self->lead, GTK_EVENT_CONTROLLER (source));
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

/* The list goes through the columns of its rows (fm-column-keys.h): Tab comes to the first cell, or
 * backwards to the last, and leaves from there. */
static gboolean
fm_formula_line_row_focus (GtkWidget *widget, GtkDirectionType direction)
{
  FmFormulaLineRow *self = FM_FORMULA_LINE_ROW (widget);

  if (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
    return fm_widget_pass_focus (widget, direction);
  if (gtk_widget_get_focus_child (widget) != NULL)
    return FALSE;
  return gtk_widget_child_focus (direction == GTK_DIR_TAB_FORWARD
                                     ? GTK_WIDGET (self->mass_entry)
                                     : GTK_WIDGET (self->remove_button),
                                 direction) ||
         fm_widget_pass_focus (widget, direction);
}

static void
fm_formula_line_row_dispose (GObject *object)
{
  FmFormulaLineRow *self = FM_FORMULA_LINE_ROW (object);

  if (self->item != NULL)
    g_signal_handlers_disconnect_by_data (self->item, self);
  g_clear_object (&self->item);
  g_clear_object (&self->session);
  g_clear_pointer (&self->shown_ingredient, fm_ingredient_unref);
  fm_share_run_clear (&self->share_run);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_FORMULA_LINE_ROW);
  G_OBJECT_CLASS (fm_formula_line_row_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, lead);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, hint_label);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, mass_entry);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, share_entry);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, patty_text);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, price_entry);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, fat_text);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, summary_text);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, lock_button);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, more_button);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, remove_button);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, message_label);
  gtk_widget_class_bind_template_child (widget_class, FmFormulaLineRow, line_menu);
  gtk_widget_class_bind_template_callback (widget_class, mass_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, share_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, price_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, price_left_cb);
  gtk_widget_class_bind_template_callback (widget_class, message_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, lock_toggled_cb);
}

static void
fm_formula_line_row_class_init (FmFormulaLineRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_formula_line_row_dispose;
  widget_class->focus = fm_formula_line_row_focus;
  g_type_ensure (FM_TYPE_FORMULA_LINE_LAYOUT);
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-formula-line-row.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "line.move-up", NULL, move_cb);
  gtk_widget_class_install_action (widget_class, "line.move-down", NULL, move_cb);
  gtk_widget_class_install_action (widget_class, "line.remove", NULL, remove_cb);
  gtk_widget_class_install_action (widget_class, "line.edit", NULL, edit_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Up, GDK_ALT_MASK, "line.move-up",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Down, GDK_ALT_MASK, "line.move-down",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F2, 0, "line.edit", NULL);
}

/* Texts that change at each keystroke keep their room, so that typing lays nothing out again. */
static void
reserve_lines (FmFormulaLineRow *self)
{
  const guint n_summary_lines = 3;

  gtk_inscription_set_min_lines (self->patty_text, 1);
  gtk_inscription_set_nat_lines (self->patty_text, 1);
  gtk_inscription_set_min_lines (self->fat_text, 1);
  gtk_inscription_set_nat_lines (self->fat_text, 1);
  gtk_inscription_set_min_lines (self->summary_text, n_summary_lines);
  gtk_inscription_set_nat_lines (self->summary_text, n_summary_lines);
}

static void
fm_formula_line_row_init (FmFormulaLineRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_number_entry_set_range (self->mass_entry, 0.0, FM_MAX_LINE_MASS_G);
  fm_number_entry_set_width_chars (self->mass_entry, 6);
  fm_number_entry_set_width_chars (self->share_entry, 5);
  fm_number_entry_set_width_chars (self->price_entry, 5);
  fm_number_entry_hide_unit (self->price_entry);
  reserve_lines (self);
  gtk_menu_button_set_create_popup_func (self->more_button, more_popup_cb, self, NULL);
  install_drag (self);
}

GtkWidget *
fm_formula_line_row_new (FmSession *session, FmFormulaLineItem *item)
{
  FmFormulaLineRow *self = g_object_new (FM_TYPE_FORMULA_LINE_ROW, NULL);

  self->session = g_object_ref (session);
  self->item = g_object_ref (item);
  g_signal_connect_swapped (item, "changed", G_CALLBACK (item_changed_cb), self);
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed",
                           G_CALLBACK (settings_changed_cb), self, G_CONNECT_SWAPPED);
  item_changed_cb (self);
  return GTK_WIDGET (self);
}

const char *
fm_formula_line_row_get_line_id (FmFormulaLineRow *self)
{
  g_return_val_if_fail (FM_IS_FORMULA_LINE_ROW (self), NULL);
  return fm_formula_line_item_get_figures (self->item)->id;
}

void
fm_formula_line_row_set_seen (FmFormulaLineRow *self, gboolean seen)
{
  g_return_if_fail (FM_IS_FORMULA_LINE_ROW (self));
  self->unseen = !seen;
  if (seen)
    fm_formula_line_row_catch_up (self);
}

void
fm_formula_line_row_catch_up (FmFormulaLineRow *self)
{
  g_return_if_fail (FM_IS_FORMULA_LINE_ROW (self));
  if (self->behind)
    show_figures (self);
}

GtkWidget *
fm_formula_line_row_get_cell (GtkWidget *row, guint column)
{
  FmFormulaLineRow *self;

  g_return_val_if_fail (FM_IS_FORMULA_LINE_ROW (row), NULL);
  self = FM_FORMULA_LINE_ROW (row);
  GtkWidget *cells[FM_FORMULA_LINE_N_CELLS] = {
    GTK_WIDGET (self->mass_entry),  GTK_WIDGET (self->share_entry), GTK_WIDGET (self->price_entry),
    GTK_WIDGET (self->lock_button), GTK_WIDGET (self->more_button), GTK_WIDGET (self->remove_button)
  };
  return column < FM_FORMULA_LINE_N_CELLS ? cells[column] : NULL;
}

void
fm_formula_line_row_focus_mass (FmFormulaLineRow *self)
{
  g_return_if_fail (FM_IS_FORMULA_LINE_ROW (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->mass_entry));
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-line.c - one permitted ingredient: its share limits and its lock */
#include "app/targets/fm-targets-line.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-number-entry.h"
#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"

struct _FmTargetsLine {
  GtkListBoxRow parent_instance;

  GtkLabel *name_label;
  GtkLabel *now_label;
  FmNumberEntry *min_entry;
  FmNumberEntry *max_entry;
  GtkCheckButton *lock_check;
  GtkWidget *figures_button;
  GtkWidget *remove_button;

  guint index;
};

G_DEFINE_FINAL_TYPE (FmTargetsLine, fm_targets_line, GTK_TYPE_LIST_BOX_ROW)

enum {
  LIMITS_CHANGED,
  FIGURES_WANTED,
  REMOVAL_WANTED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gboolean
is_crossed (FmTargetsLine *self)
{
  return fm_number_entry_get_value (self->min_entry) > fm_number_entry_get_value (self->max_entry);
}

static void
limit_changed_cb (FmTargetsLine *self, double value, FmNumberEntry *entry)
{
  if (is_crossed (self)) {
    fm_number_entry_refuse (
        entry,
        _ ("The least share would lie above the greatest. Change or clear the other one first."));
    return;
  }
  g_signal_emit (self, signals[LIMITS_CHANGED], 0);
}

static void
lock_changed_cb (FmTargetsLine *self)
{
  const gboolean locked = gtk_check_button_get_active (self->lock_check);

  gtk_widget_set_sensitive (GTK_WIDGET (self->min_entry), !locked);
  gtk_widget_set_sensitive (GTK_WIDGET (self->max_entry), !locked);
  g_signal_emit (self, signals[LIMITS_CHANGED], 0);
}

static void
figures_clicked_cb (FmTargetsLine *self)
{
  g_signal_emit (self, signals[FIGURES_WANTED], 0);
}

static void
remove_clicked_cb (FmTargetsLine *self)
{
  g_signal_emit (self, signals[REMOVAL_WANTED], 0);
}

static void
fm_targets_line_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_TARGETS_LINE);
  G_OBJECT_CLASS (fm_targets_line_parent_class)->dispose (object);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, FM_TYPE_TARGETS_LINE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
fm_targets_line_class_init (FmTargetsLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_targets_line_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  signals[LIMITS_CHANGED] = add_signal ("limits-changed");
  signals[FIGURES_WANTED] = add_signal ("figures-wanted");
  signals[REMOVAL_WANTED] = add_signal ("removal-wanted");
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/targets/fm-targets-line.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLine, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLine, now_label);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLine, min_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLine, max_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLine, lock_check);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLine, figures_button);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLine, remove_button);
  gtk_widget_class_bind_template_callback (widget_class, figures_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, limit_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, lock_changed_cb);
}

static void
fm_targets_line_init (FmTargetsLine *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_number_entry_set_range (self->min_entry, 0.0, 100.0);
  fm_number_entry_set_range (self->max_entry, 0.0, 100.0);
  fm_number_entry_set_width_chars (self->min_entry, 5);
  fm_number_entry_set_width_chars (self->max_entry, 5);
}

static void
name_button (GtkWidget *button, const char *label)
{
  gtk_widget_set_tooltip_text (button, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  -1);
}

static void
name_controls (FmTargetsLine *self, const char *name)
{
  g_autofree char *minimum = g_strdup_printf (_ ("Least share of %s"), name);
  g_autofree char *maximum = g_strdup_printf (_ ("Greatest share of %s"), name);
  g_autofree char *lock = g_strdup_printf (_ ("Keep the mass of %s"), name);
  g_autofree char *figures = g_strdup_printf (_ ("Figures of %s…"), name);
  g_autofree char *removal = g_strdup_printf (_ ("Do not permit %s"), name);

  fm_number_entry_set_what (self->min_entry, minimum);
  fm_number_entry_set_what (self->max_entry, maximum);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->lock_check), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  lock, -1);
  name_button (self->figures_button, figures);
  name_button (self->remove_button, removal);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static char *
mass_text (const FmFormula *formula, guint index, gboolean further)
{
  const FmFormulaLine *line = fm_formula_line (formula, index);
  g_autofree char *share = fm_number_format_unit (fm_formula_share_pct (formula, index), 1, "%");
  g_autofree char *mass = fm_notebook_text (FM_MEASURE_MASS, line->mass_g, 1);

  if (further)
    return g_strdup (_ ("not in the blend yet"));
  return g_strdup_printf (_ ("now %s, %s"), share, mass);
}

/* What most aims and targets ask of an ingredient, so that a gap is seen before it is met. */
static char *
figures_text (const FmIngredient *ingredient)
{
  const char *currency = fm_notebook_units ()->currency;
  const double fat_pct = fm_ingredient_fat_g_per_100g (ingredient);
  g_autofree char *fat =
      isnan (fat_pct) ? g_strdup (_ ("not known")) : fm_number_format_unit (fat_pct, 1, "%");
  g_autofree char *price = fm_number_format_unit (ingredient->price_per_kg, 2, currency);

  if (isnan (ingredient->price_per_kg))
    /* Translators: fat of an ingredient, as in "fat 20.0 %, price not known" */
    return g_strdup_printf (_ ("fat %s, price not known"), fat);
  /* Translators: fat and price of an ingredient */
  return g_strdup_printf (_ ("fat %s, %s per kg"), fat, price);
}

GtkWidget *
fm_targets_line_new (const FmFormula *formula, guint index, gboolean further, gboolean freed)
{
  FmTargetsLine *self = g_object_new (FM_TYPE_TARGETS_LINE, NULL);
  const FmFormulaLine *line = fm_formula_line (formula, index);
  const gboolean keeps_share = fm_ingredient_kind_keeps_share (line->ingredient->kind);
  g_autofree char *mass = mass_text (formula, index, further);
  g_autofree char *figures = figures_text (line->ingredient);
  g_autofree char *now = g_strdup_printf ("%s · %s", mass, figures);

  self->index = index;
  gtk_label_set_text (self->name_label, line->ingredient->name);
  gtk_label_set_text (self->now_label, now);
  name_controls (self, line->ingredient->name);
  fm_number_entry_set_value (self->min_entry, line->min_share_pct);
  fm_number_entry_set_value (self->max_entry, line->max_share_pct);
  gtk_check_button_set_active (self->lock_check, keeps_share ? !freed : line->locked);
  gtk_widget_set_visible (GTK_WIDGET (self->lock_check), !further || keeps_share);
  gtk_widget_set_visible (self->remove_button, further);
  return GTK_WIDGET (self);
}

guint
fm_targets_line_get_index (FmTargetsLine *self)
{
  g_return_val_if_fail (FM_IS_TARGETS_LINE (self), 0);
  return self->index;
}

gboolean
fm_targets_line_store (FmTargetsLine *self, FmFormulaLine *line)
{
  g_return_val_if_fail (FM_IS_TARGETS_LINE (self), FALSE);
  if (!fm_number_entry_is_valid (self->min_entry) || !fm_number_entry_is_valid (self->max_entry) ||
      is_crossed (self))
    return FALSE;
  line->min_share_pct = fm_number_entry_get_value (self->min_entry);
  line->max_share_pct = fm_number_entry_get_value (self->max_entry);
  return TRUE;
}

gboolean
fm_targets_line_keeps_mass (FmTargetsLine *self)
{
  g_return_val_if_fail (FM_IS_TARGETS_LINE (self), FALSE);
  return gtk_check_button_get_active (self->lock_check);
}

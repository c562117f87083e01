/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-band.c - one target beyond those of the brief: its band and the value now */
#include "app/targets/fm-targets-band.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-number-entry.h"
#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"

/* Vitamins in IU reach this for liver; beyond it is a slip of the finger. */
#define MAX_AMOUNT 1e6

struct _FmTargetsBand {
  GtkListBoxRow parent_instance;

  GtkLabel *name_label;
  GtkLabel *now_label;
  GtkWidget *remove_button;
  FmNumberEntry *min_entry;
  FmNumberEntry *max_entry;

  FmQuantity quantity;
  FmNutrient nutrient;
};

G_DEFINE_FINAL_TYPE (FmTargetsBand, fm_targets_band, GTK_TYPE_LIST_BOX_ROW)

enum {
  BAND_CHANGED,
  REMOVAL_WANTED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static guint
add_target (FmTargets *targets, FmQuantity quantity, FmNutrient nutrient, FmBand band)
{
  switch (quantity) {
  case FM_QUANTITY_COLLAGEN:
    return fm_targets_add_collagen (targets, band);
  case FM_QUANTITY_COST:
    return fm_targets_add_cost (targets, band);
  case FM_QUANTITY_NUTRIENT:
    return fm_targets_add_nutrient (targets, nutrient, band);
  }
  g_return_val_if_reached (0);
}

static gboolean
is_crossed (FmTargetsBand *self)
{
  return fm_number_entry_get_value (self->min_entry) > fm_number_entry_get_value (self->max_entry);
}

static void
end_changed_cb (FmTargetsBand *self, double value, FmNumberEntry *entry)
{
  if (is_crossed (self)) {
    fm_number_entry_refuse (
        entry,
        _ ("The lower end would lie above the upper end. Change or clear the other one first."));
    return;
  }
  g_signal_emit (self, signals[BAND_CHANGED], 0);
}

static void
remove_clicked_cb (FmTargetsBand *self)
{
  g_signal_emit (self, signals[REMOVAL_WANTED], 0);
}

static void
fm_targets_band_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_TARGETS_BAND);
  G_OBJECT_CLASS (fm_targets_band_parent_class)->dispose (object);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, FM_TYPE_TARGETS_BAND, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
fm_targets_band_class_init (FmTargetsBandClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_targets_band_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  signals[BAND_CHANGED] = add_signal ("band-changed");
  signals[REMOVAL_WANTED] = add_signal ("removal-wanted");
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/targets/fm-targets-band.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTargetsBand, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsBand, now_label);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsBand, remove_button);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsBand, min_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsBand, max_entry);
  gtk_widget_class_bind_template_callback (widget_class, end_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
}

static void
fm_targets_band_init (FmTargetsBand *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_number_entry_set_range (self->min_entry, 0.0, MAX_AMOUNT);
  fm_number_entry_set_range (self->max_entry, 0.0, MAX_AMOUNT);
  fm_number_entry_set_width_chars (self->min_entry, 5);
  fm_number_entry_set_width_chars (self->max_entry, 5);
}

char *
fm_targets_band_title (FmQuantity quantity, FmNutrient nutrient)
{
  const char *currency = fm_notebook_units ()->currency;
  g_autoptr (FmTargets) targets = fm_targets_new (1.0);
  const FmTargetRow *row = NULL;
  guint index = 0;

  fm_targets_set_currency (targets, currency);
  index = add_target (targets, quantity, nutrient, (FmBand){ NAN, NAN });
  row = g_ptr_array_index (targets->rows, index);
  return g_strdup_printf ("%s (%s)", row->name, row->unit);
}

static void
name_entries (FmTargetsBand *self, const char *title)
{
  /* Translators: a target such as "Fat", then the end of its band. */
  g_autofree char *minimum = g_strdup_printf (_ ("%s, at least"), title);
  g_autofree char *maximum = g_strdup_printf (_ ("%s, at most"), title);

  fm_number_entry_set_what (self->min_entry, minimum);
  fm_number_entry_set_what (self->max_entry, maximum);
}

GtkWidget *
fm_targets_band_new (FmQuantity quantity, FmNutrient nutrient)
{
  FmTargetsBand *self = g_object_new (FM_TYPE_TARGETS_BAND, NULL);
  g_autofree char *title = fm_targets_band_title (quantity, nutrient);
  g_autofree char *removal = g_strdup_printf (_ ("Drop the target for %s"), title);

  self->quantity = quantity;
  self->nutrient = nutrient;
  gtk_label_set_text (self->name_label, title);
  name_entries (self, title);
  gtk_widget_set_tooltip_text (self->remove_button, removal);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->remove_button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, removal, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  return GTK_WIDGET (self);
}

gboolean
fm_targets_band_is (FmTargetsBand *self, FmQuantity quantity, FmNutrient nutrient)
{
  g_return_val_if_fail (FM_IS_TARGETS_BAND (self), FALSE);
  return self->quantity == quantity && self->nutrient == nutrient;
}

static FmBand
get_band (FmTargetsBand *self)
{
  return (FmBand){ fm_number_entry_get_value (self->min_entry),
                   fm_number_entry_get_value (self->max_entry) };
}

/* Names of what is used and lacks the value; "" when none does. */
static char *
who_lacks (FmTargetsBand *self, const FmFormula *formula)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    g_autoptr (FmTargets) alone = fm_targets_new (1.0);
    const guint row = add_target (alone, self->quantity, self->nutrient, (FmBand){ NAN, NAN });

    fm_targets_add_candidate (alone, line->ingredient)->current_g = 1.0;
    /* What has no protein has no share of it to lack. */
    if (line->mass_g > 0.0 && isnan (fm_targets_value_now (alone, row)) &&
        !(self->quantity == FM_QUANTITY_COLLAGEN &&
          fm_ingredient_collagen_g_per_100g (line->ingredient) == 0.0))
      g_string_append_printf (names, "%s%s", names->len > 0 ? "; " : "", line->ingredient->name);
  }
  return g_string_free (g_steal_pointer (&names), FALSE);
}

void
fm_targets_band_update (FmTargetsBand *self, const FmFormula *formula)
{
  const char *currency = fm_notebook_units ()->currency;
  g_autoptr (FmTargets) targets = fm_targets_new_from_formula (formula);
  const FmTargetRow *row = NULL;
  guint index = 0;
  double value = 0.0;
  g_autofree char *number = NULL;
  g_autofree char *names = NULL;
  g_autofree char *text = NULL;

  g_return_if_fail (FM_IS_TARGETS_BAND (self));
  fm_targets_set_currency (targets, currency);
  index = add_target (targets, self->quantity, self->nutrient, get_band (self));
  row = g_ptr_array_index (targets->rows, index);
  value = fm_targets_value_now (targets, index);
  number = fm_number_format_unit (value, row->decimals, row->unit);
  names = isnan (value) ? who_lacks (self, formula) : g_strdup ("");
  if (!isnan (value))
    text = g_strdup_printf (_ ("now %s"), number);
  else if (*names != '\0')
    text = g_strdup_printf (_ ("now not known, as it is missing for %s"), names);
  else
    text = g_strdup (_ ("now not known"));
  gtk_label_set_text (self->now_label, text);
}

gboolean
fm_targets_band_is_good (FmTargetsBand *self)
{
  g_return_val_if_fail (FM_IS_TARGETS_BAND (self), FALSE);
  return fm_number_entry_is_valid (self->min_entry) && fm_number_entry_is_valid (self->max_entry) &&
         !is_crossed (self);
}

void
fm_targets_band_add_to (FmTargetsBand *self, FmTargets *targets)
{
  const FmBand band = get_band (self);

  g_return_if_fail (FM_IS_TARGETS_BAND (self));
  if (!isnan (band.min) || !isnan (band.max))
    add_target (targets, self->quantity, self->nutrient, band);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-stated.c - entries for the figures that the rules ask for and no composition tells */
#include "app/label/fm-label-stated.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-number-row.h"

/* mg and IU too. */
#define MAX_STATED 1e6
#define STATED_DECIMALS 2
#define STATED_WIDTH_PX 120

struct _FmLabelStatedRows {
  AdwPreferencesGroup *group;
  FmLabelChoice *choice;
  gpointer owner;
  void (*changed) (gpointer owner);
  GPtrArray *rows;    /* AdwActionRow */
  GPtrArray *entries; /* FmNumberEntry in them */
};

static void
value_changed_cb (FmNumberEntry *entry, double value, FmLabelStatedRows *self)
{
  const int item = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (entry), "item"));

  self->choice->stated.per_100g[item] = value;
  self->changed (self->owner);
}

FmLabelStatedRows *
fm_label_stated_rows_new (AdwPreferencesGroup *group,
                          FmLabelChoice *choice,
                          gpointer owner,
                          void (*changed) (gpointer owner))
{
  FmLabelStatedRows *self = g_new0 (FmLabelStatedRows, 1);

  self->group = group;
  self->choice = choice;
  self->owner = owner;
  self->changed = changed;
  self->rows = g_ptr_array_new ();
  self->entries = g_ptr_array_new_with_free_func (g_object_unref);
  return self;
}

static GtkWidget *
new_entry (FmLabelStatedRows *self, const FmLabelRow *rule)
{
  const char *unit = *rule->unit != '\0' ? rule->unit : "kcal";
  /* TRANSLATORS: a row of a label, "Trans Fat", and its unit */
  g_autofree char *what =
      g_strdup_printf (_ ("%s in 100 g of blend, %s"), fm_label_row_name (rule), unit);
  GtkWidget *entry = fm_number_entry_new (what, 0.0, MAX_STATED, STATED_DECIMALS);

  g_object_set_data (G_OBJECT (entry), "item", GINT_TO_POINTER (rule->item));
  fm_number_entry_set_unit (FM_NUMBER_ENTRY (entry), unit);
  fm_number_entry_set_value (FM_NUMBER_ENTRY (entry), self->choice->stated.per_100g[rule->item]);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  gtk_widget_set_size_request (entry, STATED_WIDTH_PX, -1);
  g_signal_connect (entry, "value-changed", G_CALLBACK (value_changed_cb), self);
  return entry;
}

static void
add_row (FmLabelStatedRows *self, const FmLabelRow *rule)
{
  GtkWidget *entry = new_entry (self, rule);
  GtkWidget *row = adw_action_row_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), fm_label_row_name (rule));
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), entry);
  fm_number_row_tell_errors (FM_NUMBER_ENTRY (entry));
  adw_preferences_group_add (self->group, row);
  g_ptr_array_add (self->rows, row);
  g_ptr_array_add (self->entries, g_object_ref (entry));
}

static void
disconnect (FmLabelStatedRows *self)
{
  for (guint i = 0; i < self->entries->len; i++)
    g_signal_handlers_disconnect_by_data (g_ptr_array_index (self->entries, i), self);
  g_ptr_array_set_size (self->entries, 0);
}

void
fm_label_stated_rows_show (FmLabelStatedRows *self,
                           const FmFormula *formula,
                           const FmAnalysis *analysis)
{
  disconnect (self);
  for (guint i = 0; i < self->rows->len; i++)
    adw_preferences_group_remove (self->group, g_ptr_array_index (self->rows, i));
  g_ptr_array_set_size (self->rows, 0);
  for (guint i = 0; i < fm_n_label_rows; i++) {
    const FmLabelRow *rule = &fm_label_rows[i];

    if (rule->set == self->choice->input.set && rule->must &&
        isnan (fm_label_amount (rule->item, formula, analysis, NULL)))
      add_row (self, rule);
  }
}

const char *
fm_label_stated_rows_bad_text (FmLabelStatedRows *self)
{
  for (guint i = 0; i < self->entries->len; i++) {
    FmNumberEntry *entry = g_ptr_array_index (self->entries, i);

    if (!fm_number_entry_is_valid (entry))
      return fm_number_entry_get_message (entry);
  }
  return NULL;
}

void
fm_label_stated_rows_free (FmLabelStatedRows *self)
{
  disconnect (self);
  g_ptr_array_unref (self->entries);
  g_ptr_array_unref (self->rows);
  g_free (self);
}

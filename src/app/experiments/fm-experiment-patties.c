/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-patties.c - raw and cooked mass of every patty, with mean, spread and cook loss */
#include "app/experiments/fm-experiment-patties.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "core/experiment/fm-strange.h"
#include "core/base/fm-number.h"

/* More rows than this would not be weighed one by one, and each row is five widgets. */
#define MAX_PATTIES 200

struct _FmExperimentPatties {
  GtkWidget parent_instance;

  GtkWidget *box;
  FmNumberEntry *target_entry;
  FmNumberEntry *tolerance_entry;
  GtkGrid *grid;
  GtkButton *add_button;
  GtkLabel *raw_label;
  GtkLabel *cooked_label;

  FmExperimentDocument *document;
  GPtrArray *remark_labels; /* GtkLabel of each patty, owned by the grid */
};

G_DEFINE_FINAL_TYPE (FmExperimentPatties, fm_experiment_patties, GTK_TYPE_WIDGET)

enum {
  COLUMN_NUMBER,
  COLUMN_RAW,
  COLUMN_COOKED,
  COLUMN_REMARK,
  COLUMN_REMOVE,
};

static void rebuild (FmExperimentPatties *self);

static FmExperiment *
get_experiment (FmExperimentPatties *self)
{
  return fm_experiment_document_get_experiment (self->document);
}

static char *
format_remark (const FmExperiment *experiment, const FmPattyMass *patty)
{
  g_autoptr (GString) text = g_string_new (NULL);
  const double deviation_pct =
      100.0 * (patty->raw_g - experiment->patty_target_g) / experiment->patty_target_g;

  if (patty->raw_g > 0 && !isnan (patty->cooked_g)) {
    const double loss_pct = 100.0 * (1.0 - patty->cooked_g / patty->raw_g);
    g_autofree char *loss = fm_number_format_unit (loss_pct, 1, "%");

    g_string_append (text, loss);
  }
  if (isfinite (deviation_pct) && fabs (deviation_pct) > experiment->patty_tolerance_pct) {
    g_autofree char *amount = fm_number_format_unit (fabs (deviation_pct), 1, "%");

    if (text->len > 0)
      g_string_append_c (text, '\n');
    if (deviation_pct > 0)
      g_string_append_printf (text, _ ("%s too heavy"), amount);
    else
      g_string_append_printf (text, _ ("%s too light"), amount);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
append_spread (GString *text, const FmPattyStats *stats)
{
  g_autofree char *low = fm_notebook_text (FM_MEASURE_MASS, stats->min_g, 1);
  g_autofree char *high = fm_notebook_text (FM_MEASURE_MASS, stats->max_g, 1);

  if (!isnan (stats->sd_g)) {
    g_autofree char *sd = fm_notebook_text (FM_MEASURE_MASS, stats->sd_g, 1);

    g_string_append_printf (text, _ (", standard deviation %s"), sd);
  }
  g_string_append_printf (text, _ (", from %s to %s."), low, high);
}

static char *
format_raw (const FmExperiment *experiment, const FmPattyStats *stats)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *mean = fm_notebook_text (FM_MEASURE_MASS, stats->mean_g, 1);
  g_autofree char *target = fm_notebook_text (FM_MEASURE_MASS, experiment->patty_target_g, 1);
  g_autofree char *tolerance = fm_number_format_unit (experiment->patty_tolerance_pct, 1, "%");

  if (stats->n == 0)
    return g_strdup (_ ("No patty has been weighed raw."));
  g_string_append_printf (
      text, ngettext ("%u patty weighed raw: mean %s", "%u patties weighed raw: mean %s", stats->n),
      stats->n, mean);
  append_spread (text, stats);
  if (!isnan (experiment->patty_target_g))
    g_string_append_printf (
        text, ngettext (" %u is outside %s ± %s.", " %u are outside %s ± %s.", stats->n_outside),
        stats->n_outside, target, tolerance);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
format_cooked (const FmPattyStats *stats)
{
  g_autofree char *loss = fm_number_format_unit (stats->cook_loss_pct, 1, "%");
  g_autofree char *text = NULL;

  if (stats->n_cooked == 0)
    return g_strdup (_ ("Cook loss: weigh patties raw and cooked."));
  text = g_strdup_printf (
      ngettext ("Cook loss %s over %u patty", "Cook loss %s over %u patties", stats->n_cooked),
      loss, stats->n_cooked);
  if (!isnan (stats->cook_loss_sd_pct)) {
    g_autofree char *sd = fm_number_format (stats->cook_loss_sd_pct, 1);

    /* Translators: appended to "Cook loss 24.1 % over 6 patties" */
    return g_strdup_printf (_ ("%s, standard deviation %s percentage points."), text, sd);
  }
  return g_strconcat (text, ".", NULL);
}

static FmNumberEntry *
get_entry (FmExperimentPatties *self, int column, guint index)
{
  return FM_NUMBER_ENTRY (gtk_grid_get_child_at (self->grid, column, (int)index + 1));
}

static void
update_numbers (FmExperimentPatties *self)
{
  const FmExperiment *experiment = get_experiment (self);
  FmPattyStats stats;
  g_autofree char *raw = NULL;
  g_autofree char *cooked = NULL;

  fm_experiment_patty_stats (experiment, &stats);
  raw = format_raw (experiment, &stats);
  cooked = format_cooked (&stats);
  gtk_label_set_text (self->raw_label, raw);
  gtk_label_set_text (self->cooked_label, cooked);
  for (guint i = 0; i < MIN (experiment->patties->len, self->remark_labels->len); i++) {
    const FmPattyMass *patty = &g_array_index (experiment->patties, FmPattyMass, i);
    g_autofree char *remark = format_remark (experiment, patty);

    gtk_label_set_text (g_ptr_array_index (self->remark_labels, i), remark);
    fm_number_entry_set_warning (get_entry (self, COLUMN_RAW, i),
                                 fm_strange_patty (patty->raw_g, experiment->patty_target_g));
    fm_number_entry_set_warning (get_entry (self, COLUMN_COOKED, i),
                                 fm_strange_cooked (patty->raw_g, patty->cooked_g));
  }
}

static guint
get_index (gpointer widget)
{
  return GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (widget), "index"));
}

static void
did (FmExperimentPatties *self, FmNumberEntry *entry)
{
  fm_experiment_document_did (self->document, fm_number_entry_get_what (entry));
  update_numbers (self);
}

static void
raw_changed_cb (FmExperimentPatties *self, double value, FmNumberEntry *entry)
{
  g_array_index (get_experiment (self)->patties, FmPattyMass, get_index (entry)).raw_g = value;
  did (self, entry);
}

static void
cooked_changed_cb (FmExperimentPatties *self, double value, FmNumberEntry *entry)
{
  g_array_index (get_experiment (self)->patties, FmPattyMass, get_index (entry)).cooked_g = value;
  did (self, entry);
}

static void
target_changed_cb (FmExperimentPatties *self, double value)
{
  get_experiment (self)->patty_target_g = value;
  did (self, self->target_entry);
}

static void
tolerance_changed_cb (FmExperimentPatties *self, double value)
{
  get_experiment (self)->patty_tolerance_pct = value;
  did (self, self->tolerance_entry);
}

static void
remove_clicked_cb (FmExperimentPatties *self, GtkButton *button)
{
  const guint index = get_index (button);
  g_autofree char *what = g_strdup_printf (_ ("Remove patty %u"), index + 1);

  g_array_remove_index (get_experiment (self)->patties, index);
  rebuild (self);
  fm_experiment_document_seal (self->document);
  fm_experiment_document_did (self->document, what);
  gtk_widget_grab_focus (GTK_WIDGET (self->add_button));
}

static void
add_clicked_cb (FmExperimentPatties *self)
{
  const FmPattyMass patty = { NAN, NAN };
  g_autofree char *what = NULL;

  if (self->document == NULL)
    return;
  g_array_append_val (get_experiment (self)->patties, patty);
  what = g_strdup_printf (_ ("Add patty %u"), get_experiment (self)->patties->len);
  rebuild (self);
  fm_experiment_document_did (self->document, what);
  gtk_widget_grab_focus (
      gtk_grid_get_child_at (self->grid, COLUMN_RAW, (int)get_experiment (self)->patties->len));
}

static void
add_mass_entry (FmExperimentPatties *self,
                guint index,
                int column,
                const char *what,
                double min,
                double value,
                GCallback changed_cb)
{
  GtkWidget *entry = fm_number_entry_new (what, min, FM_MAX_PATTY_MASS_G, 2);

  g_object_set_data (G_OBJECT (entry), "index", GUINT_TO_POINTER (index));
  fm_number_entry_set_measure (FM_NUMBER_ENTRY (entry), FM_MEASURE_MASS);
  fm_number_entry_hide_unit (FM_NUMBER_ENTRY (entry));
  fm_number_entry_set_value (FM_NUMBER_ENTRY (entry), value);
  g_signal_connect_swapped (entry, "value-changed", changed_cb, self);
  gtk_grid_attach (self->grid, entry, column, (int)index + 1, 1, 1);
}

static void
add_remove_button (FmExperimentPatties *self, guint index)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *name = g_strdup_printf (_ ("Remove patty %u"), index + 1);

  g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (index));
  gtk_widget_set_tooltip_text (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (remove_clicked_cb), self);
  gtk_grid_attach (self->grid, button, COLUMN_REMOVE, (int)index + 1, 1, 1);
}

static void
add_row (FmExperimentPatties *self, guint index)
{
  const FmPattyMass *patty = &g_array_index (get_experiment (self)->patties, FmPattyMass, index);
  g_autofree char *number = g_strdup_printf ("%u", index + 1);
  g_autofree char *raw = g_strdup_printf (_ ("Raw mass of patty %u"), index + 1);
  g_autofree char *cooked = g_strdup_printf (_ ("Cooked mass of patty %u"), index + 1);
  GtkWidget *remark = gtk_label_new (NULL);

  gtk_grid_attach (self->grid, gtk_label_new (number), COLUMN_NUMBER, (int)index + 1, 1, 1);
  add_mass_entry (self, index, COLUMN_RAW, raw, 0.1, patty->raw_g, G_CALLBACK (raw_changed_cb));
  add_mass_entry (self, index, COLUMN_COOKED, cooked, 0, patty->cooked_g,
                  G_CALLBACK (cooked_changed_cb));
  gtk_label_set_xalign (GTK_LABEL (remark), 0);
  gtk_label_set_wrap (GTK_LABEL (remark), TRUE);
  gtk_widget_set_hexpand (remark, TRUE);
  gtk_widget_add_css_class (remark, "caption");
  gtk_widget_add_css_class (remark, "numeric");
  gtk_grid_attach (self->grid, remark, COLUMN_REMARK, (int)index + 1, 1, 1);
  g_ptr_array_add (self->remark_labels, remark);
  if (fm_experiment_document_is_editable (self->document))
    add_remove_button (self, index);
}

static void
add_heading (FmExperimentPatties *self, int column, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_add_css_class (label, "caption-heading");
  gtk_grid_attach (self->grid, label, column, 0, 1, 1);
}

static void
rebuild (FmExperimentPatties *self)
{
  g_autofree char *unit = fm_measure_unit (FM_MEASURE_MASS, fm_notebook_units ());
  /* TRANSLATORS: heading of a column, and its unit: "Raw, g" */
  g_autofree char *raw = g_strdup_printf (_ ("Raw, %s"), unit);
  g_autofree char *cooked = g_strdup_printf (_ ("Cooked, %s"), unit);
  GtkWidget *child;
  guint n_patties;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->grid))) != NULL)
    gtk_grid_remove (self->grid, child);
  g_ptr_array_set_size (self->remark_labels, 0);
  if (self->document == NULL)
    return;
  add_heading (self, COLUMN_NUMBER, _ ("Patty"));
  add_heading (self, COLUMN_RAW, raw);
  add_heading (self, COLUMN_COOKED, cooked);
  add_heading (self, COLUMN_REMARK, _ ("Cook loss"));
  n_patties = get_experiment (self)->patties->len;
  for (guint i = 0; i < MIN (n_patties, MAX_PATTIES); i++)
    add_row (self, i);
  gtk_widget_set_sensitive (GTK_WIDGET (self->add_button), n_patties < MAX_PATTIES);
  update_numbers (self);
}

static void
fm_experiment_patties_dispose (GObject *object)
{
  FmExperimentPatties *self = FM_EXPERIMENT_PATTIES (object);

  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_EXPERIMENT_PATTIES);
  g_clear_object (&self->document);
  g_clear_pointer (&self->remark_labels, g_ptr_array_unref);
  G_OBJECT_CLASS (fm_experiment_patties_parent_class)->dispose (object);
}

static void
fm_experiment_patties_class_init (FmExperimentPattiesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_patties_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-patties.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPatties, box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPatties, target_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPatties, tolerance_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPatties, grid);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPatties, add_button);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPatties, raw_label);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPatties, cooked_label);
  gtk_widget_class_bind_template_callback (widget_class, target_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, tolerance_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_clicked_cb);
}

static void
fm_experiment_patties_init (FmExperimentPatties *self)
{
  self->remark_labels = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed", G_CALLBACK (rebuild),
                           self, G_CONNECT_SWAPPED);
}

static void
show_targets (FmExperimentPatties *self)
{
  fm_number_entry_load_value (self->target_entry, get_experiment (self)->patty_target_g);
  fm_number_entry_load_value (self->tolerance_entry, get_experiment (self)->patty_tolerance_pct);
}

void
fm_experiment_patties_set_document (FmExperimentPatties *self, FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_EXPERIMENT_PATTIES (self));
  if (!g_set_object (&self->document, document))
    return;
  if (document != NULL)
    show_targets (self);
  rebuild (self);
}

static void
show_masses (FmExperimentPatties *self)
{
  const GArray *patties = get_experiment (self)->patties;

  for (guint i = 0; i < patties->len; i++) {
    const FmPattyMass *patty = &g_array_index (patties, FmPattyMass, i);

    fm_number_entry_load_value (get_entry (self, COLUMN_RAW, i), patty->raw_g);
    fm_number_entry_load_value (get_entry (self, COLUMN_COOKED, i), patty->cooked_g);
  }
  update_numbers (self);
}

void
fm_experiment_patties_update (FmExperimentPatties *self)
{
  g_return_if_fail (FM_IS_EXPERIMENT_PATTIES (self));
  show_targets (self);
  if (get_experiment (self)->patties->len == self->remark_labels->len)
    show_masses (self);
  else
    rebuild (self);
}

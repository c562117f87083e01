/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-weighings.c - planned and weighed grams of each ingredient, with the deviation */
#include "app/experiments/fm-experiment-weighings.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/batch/fm-correct-weighings.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/base/fm-number.h"
#include "core/experiment/fm-experiment-repeat.h"

struct _FmExperimentWeighings {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkGrid *grid;
  GtkLabel *empty_label;
  GtkLabel *total_label;
  GtkWidget *buttons_box;
  GtkLabel *correct_error_label;
  GtkEntry *extra_entry;
  GtkButton *extra_button;
  GtkWidget *extra_box;

  FmSession *session;
  FmExperimentDocument *document;
  GPtrArray *deviation_labels; /* GtkLabel of each weighing, owned by the grid */
};

G_DEFINE_FINAL_TYPE (FmExperimentWeighings, fm_experiment_weighings, GTK_TYPE_WIDGET)

enum {
  COLUMN_PLANNED,
  COLUMN_WEIGHED,
  COLUMN_DEVIATION,
};

static GArray *
get_weighings (FmExperimentWeighings *self)
{
  return fm_experiment_document_get_experiment (self->document)->weighings;
}

/* Takes @text, that of the size of @value. */
static char *
add_sign (double value, char *text)
{
  g_autofree char *size = text;

  if (fabs (value) < 0.05)
    return g_steal_pointer (&size);
  return g_strconcat (value < 0 ? "−" : "+", size, NULL);
}

/* "+1.2 g" above "+0.6 %"; a dash as long as the planned or the weighed mass is not known. */
static char *
format_deviation (double planned_g, double weighed_g)
{
  g_autofree char *grams = NULL;
  g_autofree char *percent = NULL;

  if (isnan (planned_g) || isnan (weighed_g))
    return g_strdup ("—");
  const double more_g = weighed_g - planned_g;
  grams = add_sign (more_g, fm_notebook_text (FM_MEASURE_MASS, fabs (more_g), 1));
  if (planned_g <= 0)
    return g_steal_pointer (&grams);
  const double more_pct = 100.0 * more_g / planned_g;
  percent = add_sign (more_pct, fm_number_format_unit (fabs (more_pct), 1, "%"));
  return g_strdup_printf ("%s\n%s", grams, percent);
}

static void
update_total (FmExperimentWeighings *self)
{
  const GArray *weighings = get_weighings (self);
  double planned_g = 0;
  double weighed_g = 0;
  guint n_weighed = 0;
  g_autofree char *planned = NULL;
  g_autofree char *weighed = NULL;
  g_autofree char *text = NULL;

  for (guint i = 0; i < weighings->len; i++) {
    const FmWeighing *weighing = &g_array_index (weighings, FmWeighing, i);

    planned_g += isnan (weighing->planned_g) ? 0 : weighing->planned_g;
    weighed_g += isnan (weighing->weighed_g) ? 0 : weighing->weighed_g;
    n_weighed += isnan (weighing->weighed_g) ? 0 : 1;
  }
  planned = fm_notebook_text (FM_MEASURE_MASS, planned_g, 1);
  weighed = fm_notebook_text (FM_MEASURE_MASS, weighed_g, 1);
  text = g_strdup_printf (_ ("Planned %s in all, weighed %s so far (%u of %u weighed)."), planned,
                          weighed, n_weighed, weighings->len);
  gtk_label_set_text (self->total_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->total_label), weighings->len > 0);
}

static void
update_deviations (FmExperimentWeighings *self)
{
  const GArray *weighings = get_weighings (self);

  for (guint i = 0; i < MIN (weighings->len, self->deviation_labels->len); i++) {
    const FmWeighing *weighing = &g_array_index (weighings, FmWeighing, i);
    g_autofree char *text = format_deviation (weighing->planned_g, weighing->weighed_g);

    gtk_label_set_text (g_ptr_array_index (self->deviation_labels, i), text);
  }
  update_total (self);
}

static void
weighed_changed_cb (FmExperimentWeighings *self, double value, FmNumberEntry *entry)
{
  const guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (entry), "index"));

  g_array_index (get_weighings (self), FmWeighing, index).weighed_g = value;
  fm_experiment_document_did (self->document, fm_number_entry_get_what (entry));
  update_deviations (self);
}

static GtkWidget *
make_label (const char *text, gboolean numeric)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), numeric ? 1 : 0);
  if (numeric)
    gtk_widget_add_css_class (label, "numeric");
  return label;
}

static GtkWidget *
make_name_label (const FmWeighing *weighing)
{
  GtkWidget *label = make_label (weighing->name, FALSE);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  return label;
}

static GtkWidget *
make_planned_label (const FmWeighing *weighing)
{
  g_autofree char *mass = fm_notebook_text (FM_MEASURE_MASS, weighing->planned_g, 1);
  g_autofree char *planned = isnan (weighing->planned_g) ? g_strdup (_ ("not planned"))
                                                         : g_strdup_printf (_ ("planned %s"), mass);
  GtkWidget *label = make_label (planned, FALSE);

  gtk_widget_add_css_class (label, "dim-label");
  gtk_widget_set_hexpand (label, TRUE);
  return label;
}

static void
add_row (FmExperimentWeighings *self, guint index)
{
  const FmWeighing *weighing = &g_array_index (get_weighings (self), FmWeighing, index);
  g_autofree char *what = fm_notebook_weighed_name (weighing->name);
  GtkWidget *entry = fm_number_entry_new (what, 0, FM_MAX_LINE_MASS_G, 2);
  GtkWidget *deviation = make_label (NULL, TRUE);
  const int row = 2 * (int)index; /* the name has a row to itself */

  g_object_set_data (G_OBJECT (entry), "index", GUINT_TO_POINTER (index));
  fm_number_entry_set_measure (FM_NUMBER_ENTRY (entry), FM_MEASURE_MASS);
  fm_number_entry_set_value (FM_NUMBER_ENTRY (entry), weighing->weighed_g);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  gtk_label_set_width_chars (GTK_LABEL (deviation), 9);
  g_signal_connect_swapped (entry, "value-changed", G_CALLBACK (weighed_changed_cb), self);
  gtk_widget_set_margin_bottom (entry, 6);
  gtk_grid_attach (self->grid, make_name_label (weighing), COLUMN_PLANNED, row, 3, 1);
  gtk_grid_attach (self->grid, make_planned_label (weighing), COLUMN_PLANNED, row + 1, 1, 1);
  gtk_grid_attach (self->grid, entry, COLUMN_WEIGHED, row + 1, 1, 1);
  gtk_grid_attach (self->grid, deviation, COLUMN_DEVIATION, row + 1, 1, 1);
  g_ptr_array_add (self->deviation_labels, deviation);
}

static void
rebuild (FmExperimentWeighings *self)
{
  GtkWidget *child;
  guint n_rows = 0;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->grid))) != NULL)
    gtk_grid_remove (self->grid, child);
  g_ptr_array_set_size (self->deviation_labels, 0);
  if (self->document != NULL) {
    n_rows = get_weighings (self)->len;
    for (guint i = 0; i < n_rows; i++)
      add_row (self, i);
    update_deviations (self);
  }
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), n_rows == 0);
  gtk_widget_set_visible (self->buttons_box, n_rows > 0);
}

static void
show_correct_error (GtkWidget *widget, const char *message)
{
  FmExperimentWeighings *self = FM_EXPERIMENT_WEIGHINGS (widget);

  gtk_label_set_text (self->correct_error_label, message);
  gtk_widget_set_visible (GTK_WIDGET (self->correct_error_label), *message != '\0');
}

static void
correct_clicked_cb (FmExperimentWeighings *self)
{
  if (self->document == NULL)
    return;
  show_correct_error (GTK_WIDGET (self), "");
  fm_correct_weighings_present (GTK_WIDGET (self), self->session, self->document,
                                show_correct_error);
}

static void
planned_clicked_cb (FmExperimentWeighings *self)
{
  if (self->document == NULL ||
      !fm_experiment_weigh_as_planned (fm_experiment_document_get_experiment (self->document)))
    return;
  fm_experiment_document_seal (self->document);
  fm_experiment_document_did (self->document, _ ("Weighed as planned"));
  fm_experiment_weighings_update (self);
}

static void
extra_changed_cb (FmExperimentWeighings *self)
{
  g_autofree char *name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->extra_entry)));

  gtk_widget_set_sensitive (GTK_WIDGET (self->extra_button), *g_strstrip (name) != '\0');
}

static void
add_extra_cb (FmExperimentWeighings *self)
{
  g_autofree char *name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->extra_entry)));
  g_autofree char *what = NULL;

  g_strstrip (name);
  if (name[0] == '\0' || self->document == NULL)
    return;
  fm_experiment_add_weighing (fm_experiment_document_get_experiment (self->document), NULL, name,
                              NAN, NAN);
  gtk_editable_set_text (GTK_EDITABLE (self->extra_entry), "");
  rebuild (self);
  what = g_strdup_printf (_ ("Add %s"), name);
  fm_experiment_document_did (self->document, what);
  gtk_widget_grab_focus (
      gtk_grid_get_child_at (self->grid, COLUMN_WEIGHED, 2 * (int)get_weighings (self)->len - 1));
}

static void
fm_experiment_weighings_dispose (GObject *object)
{
  FmExperimentWeighings *self = FM_EXPERIMENT_WEIGHINGS (object);

  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_EXPERIMENT_WEIGHINGS);
  g_clear_object (&self->document);
  g_clear_object (&self->session);
  g_clear_pointer (&self->deviation_labels, g_ptr_array_unref);
  G_OBJECT_CLASS (fm_experiment_weighings_parent_class)->dispose (object);
}

static void
fm_experiment_weighings_class_init (FmExperimentWeighingsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_weighings_dispose;
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-weighings.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, grid);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, empty_label);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, total_label);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, buttons_box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, correct_error_label);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, extra_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, extra_button);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentWeighings, extra_box);
  gtk_widget_class_bind_template_callback (widget_class, correct_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, planned_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, extra_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_extra_cb);
}

static void
fm_experiment_weighings_init (FmExperimentWeighings *self)
{
  self->deviation_labels = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed", G_CALLBACK (rebuild),
                           self, G_CONNECT_SWAPPED);
}

void
fm_experiment_weighings_set_document (FmExperimentWeighings *self,
                                      FmSession *session,
                                      FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_EXPERIMENT_WEIGHINGS (self));
  g_set_object (&self->session, session);
  if (!g_set_object (&self->document, document))
    return;
  show_correct_error (GTK_WIDGET (self), "");
  rebuild (self);
}

static void
show_masses (FmExperimentWeighings *self)
{
  const GArray *weighings = get_weighings (self);

  for (guint i = 0; i < weighings->len; i++)
    fm_number_entry_load_value (
        FM_NUMBER_ENTRY (gtk_grid_get_child_at (self->grid, COLUMN_WEIGHED, 2 * (int)i + 1)),
        g_array_index (weighings, FmWeighing, i).weighed_g);
  update_deviations (self);
}

void
fm_experiment_weighings_update (FmExperimentWeighings *self)
{
  g_return_if_fail (FM_IS_EXPERIMENT_WEIGHINGS (self));
  if (get_weighings (self)->len == self->deviation_labels->len)
    show_masses (self);
  else
    rebuild (self);
}

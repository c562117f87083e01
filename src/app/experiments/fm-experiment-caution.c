/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-caution.c - the ground meat caution, with the authority behind each figure */
#include "app/experiments/fm-experiment-caution.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-widget.h"
#include "core/cooking/fm-caution.h"
#include "core/base/fm-number.h"

struct _FmExperimentCaution {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *text_label;
  GtkLabel *peak_label;
  GtkWidget *judged_box;
  GtkBox *figures_box;

  FmSpeciesSet species;
  double peak_core_c;
};

G_DEFINE_FINAL_TYPE (FmExperimentCaution, fm_experiment_caution, GTK_TYPE_WIDGET)

/* Longer tables are not listed here. */
#define MOST_ROWS_LISTED 4

static char *
format_hold (double hold_s)
{
  g_autofree char *number = NULL;

  if (hold_s <= 0)
    return g_strdup (_ ("no holding time given"));
  if (hold_s >= 60) {
    number = fm_number_to_edit (hold_s / 60.0, 1);
    return g_strdup_printf (_ ("held for %s min"), number);
  }
  number = fm_number_to_edit (hold_s, 0);
  return g_strdup_printf (_ ("held for %s s"), number);
}

/* "71.1 °C (160 °F), no holding time given; ...": long tables stand with the readings instead. */
static void
append_rows (GString *text, const FmHoldRow *rows, guint n_rows)
{
  for (guint i = 0; i < n_rows && n_rows <= MOST_ROWS_LISTED; i++) {
    g_autofree char *temp = fm_hold_row_temp_format (&rows[i]);
    g_autofree char *hold = format_hold (rows[i].hold_s);

    g_string_append_printf (text, "%s%s, %s", i > 0 ? "; " : ": ", temp, hold);
  }
}

static void
add_figure (FmExperimentCaution *self, FmAuthority authority, const FmCookFood *food)
{
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];
  guint n_rows = fm_authority_rows (authority, food, rows);
  g_autoptr (GString) text = g_string_new (fm_authority_name (authority));
  GtkWidget *label;

  append_rows (text, rows, n_rows);
  g_string_append_printf (text, ". %s", fm_authority_note (authority));
  label = gtk_label_new (text->str);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_box_append (self->figures_box, label);
}

static void
show_peak (FmExperimentCaution *self)
{
  g_autofree char *text = fm_caution_for_peak (self->species, self->peak_core_c);

  gtk_label_set_text (self->peak_label, text);
  /* One line until there is something to judge; the page says at its end what holds always. */
  gtk_widget_set_visible (self->judged_box, !isnan (self->peak_core_c));
}

static void
fm_experiment_caution_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_EXPERIMENT_CAUTION);
  G_OBJECT_CLASS (fm_experiment_caution_parent_class)->dispose (object);
}

static void
fm_experiment_caution_class_init (FmExperimentCautionClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_caution_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-caution.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentCaution, box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentCaution, text_label);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentCaution, peak_label);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentCaution, judged_box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentCaution, figures_box);
}

static void
fm_experiment_caution_init (FmExperimentCaution *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_label_set_text (self->text_label, fm_caution_text ());
  self->peak_core_c = (double)NAN;
}

void
fm_experiment_caution_set_peak (FmExperimentCaution *self, double peak_core_c)
{
  g_return_if_fail (FM_IS_EXPERIMENT_CAUTION (self));
  self->peak_core_c = peak_core_c;
  show_peak (self);
}

void
fm_experiment_caution_set_food (FmExperimentCaution *self, const FmCookFood *food)
{
  GtkWidget *label;

  g_return_if_fail (FM_IS_EXPERIMENT_CAUTION (self));
  self->species = food->species;
  while ((label = gtk_widget_get_first_child (GTK_WIDGET (self->figures_box))) != NULL)
    gtk_box_remove (self->figures_box, label);
  for (guint i = 0; i < FM_N_AUTHORITIES; i++)
    if (fm_authority_applies ((FmAuthority)i, food->species))
      add_figure (self, (FmAuthority)i, food);
  show_peak (self);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-numbers.c - a fitted model in words: a sentence, its numbers, the method and its source */
#include "app/map/fm-map-numbers.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-text-grid.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"
#include "core/statistics/fm-panel-text.h"

struct _FmMapNumbers {
  GtkWidget parent_instance;

  GtkBox *box;
  GtkLabel *sentence_label;
  GtkLabel *lack_label;
  GtkLabel *measures_label;
  GtkExpander *numbers_expander;
  GtkGrid *grid;
  GtkExpander *method_expander;
  GtkLabel *method_label;
};

G_DEFINE_FINAL_TYPE (FmMapNumbers, fm_map_numbers, GTK_TYPE_WIDGET)

static void
add_terms (FmMapNumbers *self, const FmMixFit *fit, const char *const *names, int decimals)
{
  const char *headings[] = { _ ("Term"), _ ("Coefficient"), _ ("Standard error") };
  g_auto (GStrv) terms = fm_mix_term_names (fit->order, fit->q, names);

  fm_text_grid_add_row (self->grid, headings, G_N_ELEMENTS (headings), TRUE);
  for (guint i = 0; i < fit->n_terms; i++) {
    g_autofree char *coefficient = fm_number_format (fit->coefficient[i], decimals);
    g_autofree char *error = fm_number_format (fit->std_error[i], decimals);
    const char *texts[] = { terms[i], coefficient, error };

    fm_text_grid_add_row (self->grid, texts, G_N_ELEMENTS (texts), FALSE);
  }
}

static char *
measures_text (const FmMixFit *fit, int decimals)
{
  g_autofree char *r2 = fm_number_format (fit->r2, 2);
  g_autofree char *adjusted = fm_number_format (fit->r2_adjusted, 2);
  g_autofree char *sigma = fm_number_format (fit->sigma, decimals);
  g_autofree char *loo = fm_number_format (fit->loo_rmse, decimals);
  g_autofree char *loo_r2 = fm_number_format (fit->loo_r2, 2);
  g_autofree char *f = fm_number_format (fit->f, 2);
  g_autofree char *p = fm_panel_p_text (fit->p);
  GString *text = g_string_new (NULL);

  /* Translators: three numbers; a dash stands for one that is not known. */
  g_string_append_printf (text, _ ("R² %s (adjusted %s); scatter about the model %s. "), r2,
                          adjusted, sigma);
  g_string_append_printf (text, _ ("Leave-one-out error %s, R² of that %s. "), loo, loo_r2);
  if (!isnan (fit->p))
    /* Translators: F, two degrees of freedom, "p = 0.03". */
    g_string_append_printf (text, _ ("All blends alike: F %s with %u and %u, %s. "), f,
                            fit->n_terms - 1, fit->df_error, p);
  if (!isnan (fit->p_lack)) {
    g_autofree char *f_lack = fm_number_format (fit->f_lack, 2);
    g_autofree char *p_lack = fm_panel_p_text (fit->p_lack);

    g_string_append_printf (text, _ ("Lack of fit: F %s with %u and %u, %s."), f_lack, fit->df_lack,
                            fit->df_pure, p_lack);
  } else {
    g_string_append (text, _ ("Lack of fit: not testable."));
  }
  return g_string_free (text, FALSE);
}

static void
show_parts (FmMapNumbers *self, gboolean has_fit)
{
  gtk_widget_set_visible (GTK_WIDGET (self->lack_label), has_fit);
  gtk_widget_set_visible (GTK_WIDGET (self->numbers_expander), has_fit);
  gtk_widget_set_visible (GTK_WIDGET (self->method_expander), has_fit);
}

static void
show_fit (FmMapNumbers *self, const FmMapFit *fit, const char *const *names)
{
  const int decimals = fm_map_response_decimals (fit->response) + 1;
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (fit->response, &unit);
  g_autofree char *sentence = fm_mix_verdict_sentence (&fit->verdict, fit->fit, &wording);
  g_autofree char *lack = fm_mix_lack_sentence (fit->fit);
  g_autofree char *measures = measures_text (fit->fit, decimals);
  g_autofree char *method = fm_mix_fit_method (fit->fit);
  g_autofree char *next = fm_mix_next_method ();
  g_autofree char *both = g_strconcat (method, "\n", next, NULL);

  show_parts (self, TRUE);
  fm_widget_set_label (self->sentence_label, sentence);
  fm_widget_set_label (self->lack_label, lack);
  fm_widget_set_label (self->measures_label, measures);
  fm_widget_set_label (self->method_label, both);
  fm_text_grid_clear (self->grid);
  add_terms (self, fit->fit, names, decimals);
}

static void
fm_map_numbers_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_MAP_NUMBERS);
  G_OBJECT_CLASS (fm_map_numbers_parent_class)->dispose (object);
}

static void
fm_map_numbers_class_init (FmMapNumbersClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_numbers_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-numbers.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapNumbers, box);
  gtk_widget_class_bind_template_child (widget_class, FmMapNumbers, sentence_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapNumbers, lack_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapNumbers, measures_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapNumbers, numbers_expander);
  gtk_widget_class_bind_template_child (widget_class, FmMapNumbers, grid);
  gtk_widget_class_bind_template_child (widget_class, FmMapNumbers, method_expander);
  gtk_widget_class_bind_template_child (widget_class, FmMapNumbers, method_label);
}

static void
fm_map_numbers_init (FmMapNumbers *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_map_numbers_show (FmMapNumbers *self, const FmMapFit *fit, const char *const *names)
{
  g_return_if_fail (FM_IS_MAP_NUMBERS (self));
  if (fit == NULL || fit->fit == NULL)
    fm_map_numbers_say (self, fit != NULL ? fit->refusal : "");
  else
    show_fit (self, fit, names);
}

void
fm_map_numbers_say (FmMapNumbers *self, const char *sentence)
{
  g_return_if_fail (FM_IS_MAP_NUMBERS (self));
  show_parts (self, FALSE);
  fm_widget_set_label (self->sentence_label, sentence);
}

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
  GtkBox *figures_box;
};

G_DEFINE_FINAL_TYPE (FmExperimentCaution, fm_experiment_caution, GTK_TYPE_WIDGET)

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

/* "USDA FSIS, ground meat, consumers: 71.1 °C (160 °F), no holding time given." and the source. */
static char *
format_figure (const FmCautionFigure *figure)
{
  g_autofree char *celsius = fm_number_to_edit (figure->temp_c, 1);
  g_autofree char *fahrenheit = fm_number_to_edit (figure->temp_f, 0);
  g_autofree char *hold = format_hold (figure->hold_s);

  return g_strdup_printf (_ ("%s, %s: %s °C (%s °F), %s. Source: %s."), figure->authority,
                          _ (figure->food), celsius, fahrenheit, hold, _ (figure->source));
}

static void
add_figures (FmExperimentCaution *self)
{
  guint n_figures = 0;
  const FmCautionFigure *figures = fm_caution_figures (&n_figures);

  for (guint i = 0; i < n_figures; i++) {
    g_autofree char *text = format_figure (&figures[i]);
    GtkWidget *label = gtk_label_new (text);

    gtk_label_set_wrap (GTK_LABEL (label), TRUE);
    gtk_label_set_xalign (GTK_LABEL (label), 0);
    gtk_label_set_selectable (GTK_LABEL (label), TRUE);
    gtk_box_append (self->figures_box, label);
  }
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
  gtk_widget_class_bind_template_child (widget_class, FmExperimentCaution, figures_box);
}

static void
fm_experiment_caution_init (FmExperimentCaution *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_label_set_text (self->text_label, fm_caution_text ());
  add_figures (self);
  fm_experiment_caution_set_peak (self, NAN);
}

void
fm_experiment_caution_set_peak (FmExperimentCaution *self, double peak_core_c)
{
  g_autofree char *text = fm_caution_for_peak (peak_core_c);

  g_return_if_fail (FM_IS_EXPERIMENT_CAUTION (self));
  gtk_label_set_text (self->peak_label, text);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-verdicts.c - integrated lethality and each authority's hold table for core readings */
#include "app/cook/fm-cook-verdicts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-accessible.h"
#include "app/cook/fm-cook-own-params.h"
#include "app/cook/fm-cook-verdict-row.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"
#include "core/heat/fm-lethality.h"
#include "core/base/fm-number.h"

struct _FmCookVerdicts {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *food_label;
  GtkDropDown *params_drop_down; /* published sets, then the own one */
  GtkLabel *params_label;
  FmCookOwnParams *own_params;
  GtkLabel *lethality_label;
  GtkLabel *logs_label;
  GtkBox *rows_box;
  GtkLabel *caution_label;

  FmExperimentDocument *document;
  FmCookFood food;
  GPtrArray *published; /* FmLethalityParams, those that fit the blend */
};

G_DEFINE_FINAL_TYPE (FmCookVerdicts, fm_cook_verdicts, GTK_TYPE_WIDGET)

static gboolean
wants_own (FmCookVerdicts *self)
{
  return gtk_drop_down_get_selected (self->params_drop_down) == self->published->len;
}

static void
read_params (FmCookVerdicts *self, FmLethalityParams *params)
{
  const guint selected = gtk_drop_down_get_selected (self->params_drop_down);

  if (selected < self->published->len)
    *params = *(const FmLethalityParams *)g_ptr_array_index (self->published, selected);
  else
    fm_cook_own_params_read (self->own_params, params);
}

static char *
integral_text (const FmLethality *lethality, const FmLethalityParams *params)
{
  g_autofree char *minutes = fm_lethality_f_format (lethality);
  g_autofree char *ref = fm_notebook_text (FM_MEASURE_TEMPERATURE, params->ref_c, 1);

  /* Translators: minutes, then the reference temperature they count at. */
  return g_strdup_printf (_ ("Integrated lethality F: %s at %s"), minutes, ref);
}

static void
show_lethality (FmCookVerdicts *self, const FmExperiment *experiment)
{
  FmLethalityParams params;
  g_autoptr (FmLethality) lethality = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *integral = NULL;
  g_autofree char *logs = NULL;

  read_params (self, &params);
  lethality = fm_lethality_new (experiment->core_readings, &params, &error);
  if (lethality != NULL) {
    integral = integral_text (lethality, &params);
    logs = fm_lethality_text (lethality, &params);
  }
  gtk_label_set_text (self->lethality_label, integral != NULL ? integral : error->message);
  gtk_label_set_text (self->logs_label, logs != NULL ? logs : "");
  gtk_widget_set_visible (GTK_WIDGET (self->logs_label), logs != NULL);
}

static void
show_readings (FmCookVerdicts *self)
{
  const FmExperiment *experiment;
  g_autofree char *caution = NULL;

  if (self->document == NULL || self->published == NULL)
    return;
  experiment = fm_experiment_document_get_experiment (self->document);
  show_lethality (self, experiment);
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->rows_box)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    fm_cook_verdict_row_set_readings (FM_COOK_VERDICT_ROW (row), experiment->core_readings);
  caution = fm_hold_doneness_caution (self->food.species, fm_experiment_peak_core_c (experiment));
  gtk_label_set_text (self->caution_label, caution != NULL ? caution : "");
  gtk_widget_set_visible (GTK_WIDGET (self->caution_label), caution != NULL);
}

static void
params_changed_cb (FmCookVerdicts *self)
{
  if (self->published == NULL)
    return;
  gtk_widget_set_visible (GTK_WIDGET (self->own_params), wants_own (self));
  show_readings (self);
}

/* The names are long: shortened in the button, whole in the list. */
static void
setup_name_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer data)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (GPOINTER_TO_INT (data))
    gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  else
    gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 32);
  gtk_list_item_set_child (list_item, label);
}

static void
bind_name_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  const char *name = gtk_string_object_get_string (gtk_list_item_get_item (list_item));

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (list_item)), name);
}

static GtkListItemFactory *
name_factory_new (gboolean whole)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_name_cb), GINT_TO_POINTER (whole));
  g_signal_connect (factory, "bind", G_CALLBACK (bind_name_cb), NULL);
  return factory;
}

static void
setup_params (FmCookVerdicts *self)
{
  g_autoptr (GtkListItemFactory) in_button = name_factory_new (FALSE);
  g_autoptr (GtkListItemFactory) in_list = name_factory_new (TRUE);

  gtk_drop_down_set_factory (self->params_drop_down, in_button);
  gtk_drop_down_set_list_factory (self->params_drop_down, in_list);
  fm_accessible_name_drop_down (self->params_drop_down, _ ("Organism and food of D and z"));
}

static void
fill_params (FmCookVerdicts *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  g_autofree char *choice = fm_lethality_choice_text (&self->food);
  gboolean fits;

  g_clear_pointer (&self->published, g_ptr_array_unref);
  self->published = fm_lethality_params_for (&self->food, &fits);
  for (guint i = 0; i < self->published->len; i++)
    gtk_string_list_take (names, fm_lethality_params_name (g_ptr_array_index (self->published, i)));
  gtk_string_list_append (names, _ ("Own D and z, typed here"));
  gtk_drop_down_set_model (self->params_drop_down, G_LIST_MODEL (names));
  gtk_label_set_text (self->params_label, choice);
}

static void
fill_rows (FmCookVerdicts *self)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->rows_box))) != NULL)
    gtk_box_remove (self->rows_box, row);
  for (guint i = 0; i < FM_N_AUTHORITIES; i++)
    if (fm_authority_applies ((FmAuthority)i, self->food.species))
      gtk_box_append (self->rows_box, fm_cook_verdict_row_new ((FmAuthority)i, &self->food));
}

static void
fm_cook_verdicts_dispose (GObject *object)
{
  FmCookVerdicts *self = FM_COOK_VERDICTS (object);

  fm_cook_verdicts_set_document (self, NULL);
  g_clear_pointer (&self->published, g_ptr_array_unref);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_COOK_VERDICTS);
  G_OBJECT_CLASS (fm_cook_verdicts_parent_class)->dispose (object);
}

static void
fm_cook_verdicts_class_init (FmCookVerdictsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_verdicts_dispose;
  g_type_ensure (FM_TYPE_COOK_OWN_PARAMS);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-verdicts.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, box);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, food_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, params_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, params_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, own_params);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, lethality_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, logs_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, rows_box);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdicts, caution_label);
  gtk_widget_class_bind_template_callback (widget_class, params_changed_cb);
}

static void
fm_cook_verdicts_init (FmCookVerdicts *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  setup_params (self);
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed",
                           G_CALLBACK (show_readings), self, G_CONNECT_SWAPPED);
}

void
fm_cook_verdicts_set_document (FmCookVerdicts *self, FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_COOK_VERDICTS (self));
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_func (self->document, show_readings, self);
  if (g_set_object (&self->document, document) && document == NULL)
    return;
  if (document != NULL)
    g_signal_connect_object (document, "changed", G_CALLBACK (show_readings), self,
                             G_CONNECT_SWAPPED);
  show_readings (self);
}

void
fm_cook_verdicts_set_food (FmCookVerdicts *self, const FmCookFood *food)
{
  g_autofree char *choice = NULL;

  g_return_if_fail (FM_IS_COOK_VERDICTS (self) && food != NULL);
  self->food = *food;
  choice = fm_authority_choice_text (food->species);
  gtk_label_set_text (self->food_label, choice);
  fill_params (self);
  fill_rows (self);
  params_changed_cb (self);
}

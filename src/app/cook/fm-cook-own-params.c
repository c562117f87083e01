/* fm-cook-own-params.c - D and z of the developer's own, as entries */
#include "app/cook/fm-cook-own-params.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-temperature-unit.h"
#include "app/widgets/fm-number-row.h"
#include "app/session/fm-preferences.h"
#include "app/widgets/fm-widget.h"

/* Temperatures at which heat kills what is counted, and nothing boils dry. */
#define MIN_REF_C 30.0
#define MAX_REF_C 150.0
#define MIN_Z_K 0.5
#define MAX_Z_K 100.0

struct _FmCookOwnParams {
  GtkWidget parent_instance;

  GtkWidget *group;
  FmNumberEntry *d_entry;
  FmNumberEntry *ref_entry;
  FmNumberEntry *z_entry;

  double d_min; /* NaN = not given, as the next two */
  double ref_c;
  double z_k;
};

G_DEFINE_FINAL_TYPE (FmCookOwnParams, fm_cook_own_params, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* A key of 0 stands for what was never given. */
static double
recall (const char *key)
{
  const double value = g_settings_get_double (fm_preferences_get (), key);

  return value > 0.0 ? value : NAN;
}

static void
remember (const char *key, double value)
{
  g_settings_set_double (fm_preferences_get (), key, isnan (value) ? 0.0 : value);
}

/* Degrees of difference, not of temperature. */
static double
z_unit_k (FmTemperatureUnit *units)
{
  return fm_temperature_unit_get_fahrenheit (units) ? 1.8 : 1.0;
}

static void
show_numbers (FmCookOwnParams *self)
{
  FmTemperatureUnit *units = fm_temperature_unit_get_default ();
  const double z_unit = z_unit_k (units);
  const char *symbol = fm_temperature_unit_symbol (units);

  fm_number_entry_load_value (self->d_entry, self->d_min);
  fm_number_entry_set_unit (self->ref_entry, symbol);
  fm_number_entry_set_range (self->ref_entry, fm_temperature_unit_to_shown (units, MIN_REF_C),
                             fm_temperature_unit_to_shown (units, MAX_REF_C));
  fm_number_entry_load_value (self->ref_entry, fm_temperature_unit_to_shown (units, self->ref_c));
  fm_number_entry_set_unit (self->z_entry, z_unit > 1.0 ? symbol : "K");
  fm_number_entry_set_range (self->z_entry, MIN_Z_K * z_unit, MAX_Z_K * z_unit);
  fm_number_entry_load_value (self->z_entry, self->z_k * z_unit);
}

static void
d_changed_cb (FmCookOwnParams *self, double value)
{
  self->d_min = value;
  remember ("own-d-min", value);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
ref_changed_cb (FmCookOwnParams *self, double value)
{
  self->ref_c = fm_temperature_unit_from_shown (fm_temperature_unit_get_default (), value);
  remember ("own-reference-c", self->ref_c);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
z_changed_cb (FmCookOwnParams *self, double value)
{
  self->z_k = value / z_unit_k (fm_temperature_unit_get_default ());
  remember ("own-z-k", self->z_k);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
fm_cook_own_params_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_COOK_OWN_PARAMS);
  G_OBJECT_CLASS (fm_cook_own_params_parent_class)->dispose (object);
}

static void
fm_cook_own_params_class_init (FmCookOwnParamsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_own_params_dispose;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_COOK_OWN_PARAMS, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-own-params.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmCookOwnParams, group);
  gtk_widget_class_bind_template_child (widget_class, FmCookOwnParams, d_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookOwnParams, ref_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookOwnParams, z_entry);
  gtk_widget_class_bind_template_callback (widget_class, d_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, ref_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, z_changed_cb);
}

static void
fm_cook_own_params_init (FmCookOwnParams *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_number_row_tell_errors (self->d_entry);
  fm_number_row_tell_errors (self->ref_entry);
  fm_number_row_tell_errors (self->z_entry);
  self->d_min = recall ("own-d-min");
  self->ref_c = recall ("own-reference-c");
  self->z_k = recall ("own-z-k");
  show_numbers (self);
  g_signal_connect_object (fm_temperature_unit_get_default (), "notify::fahrenheit",
                           G_CALLBACK (show_numbers), self, G_CONNECT_SWAPPED);
}

void
fm_cook_own_params_read (FmCookOwnParams *self, FmLethalityParams *params)
{
  g_return_if_fail (FM_IS_COOK_OWN_PARAMS (self));
  fm_lethality_params_init_own (params, self->d_min, self->ref_c, self->z_k);
}

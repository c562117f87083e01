/* fm-temperature-unit.c - the unit in which temperatures are shown and typed */
#include "app/session/fm-temperature-unit.h"

#include <gio/gio.h>

#include "core/base/fm-units.h"

#define SCHEMA_ID "io.github.forcemeat.Forcemeat"
#define KEY "temperature-unit"

struct _FmTemperatureUnit {
  GObject parent_instance;

  GSettings *settings; /* NULL when the schema is not installed, as in tests */
  gboolean fahrenheit;
};

G_DEFINE_FINAL_TYPE (FmTemperatureUnit, fm_temperature_unit, G_TYPE_OBJECT)

enum {
  PROP_0,
  PROP_FAHRENHEIT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
set_fahrenheit (FmTemperatureUnit *self, gboolean fahrenheit)
{
  if (self->fahrenheit == fahrenheit)
    return;
  self->fahrenheit = fahrenheit;
  if (self->settings != NULL)
    g_settings_set_string (self->settings, KEY, fahrenheit ? "fahrenheit" : "celsius");
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FAHRENHEIT]);
}

static void
settings_changed_cb (FmTemperatureUnit *self)
{
  g_autofree char *unit = g_settings_get_string (self->settings, KEY);

  set_fahrenheit (self, g_str_equal (unit, "fahrenheit"));
}

static GSettings *
open_settings (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = NULL;

  if (source == NULL)
    return NULL;
  schema = g_settings_schema_source_lookup (source, SCHEMA_ID, TRUE);
  if (schema == NULL || !g_settings_schema_has_key (schema, KEY))
    return NULL;
  return g_settings_new_full (schema, NULL, NULL);
}

static void
fm_temperature_unit_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_FAHRENHEIT)
    g_value_set_boolean (value, FM_TEMPERATURE_UNIT (object)->fahrenheit);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_temperature_unit_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_FAHRENHEIT)
    set_fahrenheit (FM_TEMPERATURE_UNIT (object), g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_temperature_unit_dispose (GObject *object)
{
  g_clear_object (&FM_TEMPERATURE_UNIT (object)->settings);
  G_OBJECT_CLASS (fm_temperature_unit_parent_class)->dispose (object);
}

static void
fm_temperature_unit_class_init (FmTemperatureUnitClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = fm_temperature_unit_dispose;
  object_class->get_property = fm_temperature_unit_get_property;
  object_class->set_property = fm_temperature_unit_set_property;
  props[PROP_FAHRENHEIT] =
      g_param_spec_boolean ("fahrenheit", NULL, NULL, FALSE,
                            G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
fm_temperature_unit_init (FmTemperatureUnit *self)
{
  self->settings = open_settings ();
  if (self->settings == NULL)
    return;
  g_signal_connect_swapped (self->settings, "changed::" KEY, G_CALLBACK (settings_changed_cb),
                            self);
  settings_changed_cb (self);
}

FmTemperatureUnit *
fm_temperature_unit_get_default (void)
{
  static FmTemperatureUnit *units;

  if (units == NULL)
    units = g_object_new (FM_TYPE_TEMPERATURE_UNIT, NULL);
  return units;
}

gboolean
fm_temperature_unit_get_fahrenheit (FmTemperatureUnit *self)
{
  return self->fahrenheit;
}

const char *
fm_temperature_unit_symbol (FmTemperatureUnit *self)
{
  return self->fahrenheit ? "°F" : "°C";
}

double
fm_temperature_unit_to_shown (FmTemperatureUnit *self, double temp_c)
{
  return self->fahrenheit ? fm_celsius_to_fahrenheit (temp_c) : temp_c;
}

double
fm_temperature_unit_from_shown (FmTemperatureUnit *self, double shown)
{
  return self->fahrenheit ? fm_fahrenheit_to_celsius (shown) : shown;
}

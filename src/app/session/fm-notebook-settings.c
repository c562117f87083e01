/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-settings.c - the units, the currency and the own D and z of the open notebook */
#include "app/session/fm-notebook-settings.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app/session/fm-preferences.h"
#include "core/base/fm-double.h"
#include "core/base/fm-local-units.h"
#include "store/fm-versions.h"

struct _FmNotebookSettings {
  GObject parent_instance;

  FmSettingValues values;
};

G_DEFINE_FINAL_TYPE (FmNotebookSettings, fm_notebook_settings, G_TYPE_OBJECT)

enum {
  PROP_0,
  PROP_US_MASSES,
  PROP_FAHRENHEIT,
  PROP_CURRENCY,
  N_PROPS,
};

enum {
  CHANGED,
  EDITED,
  N_SIGNALS,
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

/* Names in the notebook and in the preferences. */
static const char *const keys[] = {
  "mass-units", "temperature-unit", "currency", "own-d-min", "own-reference-c", "own-z-k",
};

static double *
own_value (FmSettingValues *self, const char *key)
{
  if (g_str_equal (key, "own-d-min"))
    return &self->own_d_min;
  if (g_str_equal (key, "own-reference-c"))
    return &self->own_ref_c;
  return g_str_equal (key, "own-z-k") ? &self->own_z_k : NULL;
}

static void
set_currency (FmUnits *units, const char *currency)
{
  g_autofree char *valid = g_utf8_make_valid (currency, -1);
  const char *end = valid;

  while (*end != '\0' && g_utf8_next_char (end) - valid < FM_CURRENCY_LENGTH)
    end = g_utf8_next_char (end);
  memset (units->currency, 0, sizeof units->currency);
  memcpy (units->currency, valid, (gsize)(end - valid));
}

/* An own value of 0 stands for what was never given. */
static char *
get_text (const FmSettingValues *self, const char *key)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  const double *own = own_value ((FmSettingValues *)self, key);

  if (own != NULL)
    return g_strdup (g_ascii_dtostr (number, sizeof number, isnan (*own) ? 0.0 : *own));
  if (g_str_equal (key, "mass-units"))
    return g_strdup (self->units.us_masses ? "us" : "metric");
  if (g_str_equal (key, "temperature-unit"))
    return g_strdup (self->units.fahrenheit ? "fahrenheit" : "celsius");
  return g_strdup (self->units.currency);
}

static void
set_text (FmSettingValues *self, const char *key, const char *text)
{
  double *own = own_value (self, key);

  if (own != NULL) {
    *own = g_ascii_strtod (text, NULL);
    if (!(*own > 0.0) || !isfinite (*own))
      *own = NAN;
  } else if (g_str_equal (key, "mass-units")) {
    self->units.us_masses = g_str_equal (text, "us");
  } else if (g_str_equal (key, "temperature-unit")) {
    self->units.fahrenheit = g_str_equal (text, "fahrenheit");
  } else {
    set_currency (&self->units, text);
  }
}

static void
edited (FmNotebookSettings *self, const char *key)
{
  g_autofree char *text = get_text (&self->values, key);

  if (own_value (&self->values, key) == NULL)
    g_settings_set_string (fm_preferences_get (), key, text);
  g_signal_emit (self, signals[EDITED], 0, key, text);
}

static void
notify_all (FmNotebookSettings *self)
{
  for (guint i = PROP_US_MASSES; i < N_PROPS; i++)
    g_object_notify_by_pspec (G_OBJECT (self), props[i]);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
fm_notebook_settings_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  const FmUnits *units = &FM_NOTEBOOK_SETTINGS (object)->values.units;

  switch (id) {
  case PROP_US_MASSES:
    g_value_set_boolean (value, units->us_masses);
    break;
  case PROP_FAHRENHEIT:
    g_value_set_boolean (value, units->fahrenheit);
    break;
  case PROP_CURRENCY:
    g_value_set_string (value, units->currency);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
fm_notebook_settings_set_property (GObject *object,
                                   guint id,
                                   const GValue *value,
                                   GParamSpec *pspec)
{
  FmNotebookSettings *self = FM_NOTEBOOK_SETTINGS (object);
  const FmUnits before = self->values.units;

  switch (id) {
  case PROP_US_MASSES:
    self->values.units.us_masses = g_value_get_boolean (value);
    break;
  case PROP_FAHRENHEIT:
    self->values.units.fahrenheit = g_value_get_boolean (value);
    break;
  case PROP_CURRENCY:
    set_currency (&self->values.units, g_value_get_string (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    return;
  }
  if (before.us_masses == self->values.units.us_masses &&
      before.fahrenheit == self->values.units.fahrenheit &&
      g_str_equal (before.currency, self->values.units.currency))
    return;
  edited (self, keys[id - PROP_US_MASSES]);
  g_object_notify_by_pspec (object, pspec);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
fm_notebook_settings_class_init (FmNotebookSettingsClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GType type = FM_TYPE_NOTEBOOK_SETTINGS;
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = fm_notebook_settings_get_property;
  object_class->set_property = fm_notebook_settings_set_property;
  props[PROP_US_MASSES] = g_param_spec_boolean ("us-masses", NULL, NULL, FALSE, flags);
  props[PROP_FAHRENHEIT] = g_param_spec_boolean ("fahrenheit", NULL, NULL, FALSE, flags);
  props[PROP_CURRENCY] = g_param_spec_string ("currency", NULL, NULL, "", flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[CHANGED] =
      g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[EDITED] = g_signal_new ("edited", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_STRING);
}

static void
fm_notebook_settings_init (FmNotebookSettings *self)
{
  fm_setting_values_init (&self->values);
}

static gboolean
is_chosen (const char *key)
{
  g_autoptr (GVariant) chosen = g_settings_get_user_value (fm_preferences_get (), key);

  return chosen != NULL;
}

static void
find_local (FmSettingValues *self)
{
  FmUnits *local = &self->local;

  *local = self->units;
  fm_local_units_read (local);
  if (is_chosen ("mass-units"))
    local->us_masses = self->units.us_masses;
  if (is_chosen ("temperature-unit"))
    local->fahrenheit = self->units.fahrenheit;
  if (is_chosen ("currency"))
    memcpy (local->currency, self->units.currency, sizeof local->currency);
}

/* Nothing stands in it yet whose price or weight would be read by other units. */
static gboolean
is_new (FmNotebook *notebook)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);

  return blends != NULL && blends->len == 0;
}

void
fm_setting_values_init (FmSettingValues *self)
{
  GSettings *preferences = fm_preferences_get ();

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++) {
    g_autoptr (GVariant) value = g_settings_get_value (preferences, keys[i]);
    double *own = own_value (self, keys[i]);

    if (own == NULL)
      set_text (self, keys[i], g_variant_get_string (value, NULL));
    else
      *own = g_variant_get_double (value) > 0.0 ? g_variant_get_double (value) : NAN;
  }
  find_local (self);
}

void
fm_setting_values_read (FmSettingValues *self, FmNotebook *notebook)
{
  const char *missing[G_N_ELEMENTS (keys) + 1] = { NULL };
  g_autoptr (GStrvBuilder) texts = g_strv_builder_new ();
  g_auto (GStrv) values = NULL;
  g_autoptr (GError) error = NULL;
  guint n = 0;

  self->notice = fm_notebook_invented (notebook);
  if (is_new (notebook))
    self->units = self->local;
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++) {
    g_autofree char *kept = fm_notebook_get_setting (notebook, keys[i]);
    g_autofree char *text = get_text (self, keys[i]);

    if (kept != NULL) {
      set_text (self, keys[i], kept);
      continue;
    }
    missing[n++] = keys[i];
    g_strv_builder_add (texts, text);
  }
  if (n == 0 || fm_notebook_is_read_only (notebook))
    return;
  values = g_strv_builder_end (texts);
  if (!fm_notebook_set_settings (notebook, missing, (const char *const *)values, &error))
    g_debug ("The notebook does not keep its settings: %s", error->message);
}

FmNotebookSettings *
fm_notebook_settings_get_default (void)
{
  static FmNotebookSettings *settings;

  if (settings == NULL)
    settings = g_object_new (FM_TYPE_NOTEBOOK_SETTINGS, NULL);
  return settings;
}

void
fm_notebook_settings_adopt (FmNotebookSettings *self, const FmSettingValues *values)
{
  g_return_if_fail (FM_IS_NOTEBOOK_SETTINGS (self));
  self->values = *values;
  notify_all (self);
}

const FmSettingValues *
fm_notebook_settings_get_values (FmNotebookSettings *self)
{
  g_return_val_if_fail (FM_IS_NOTEBOOK_SETTINGS (self), NULL);
  return &self->values;
}

void
fm_notebook_settings_set_own (FmNotebookSettings *self, double d_min, double ref_c, double z_k)
{
  FmSettingValues before;

  g_return_if_fail (FM_IS_NOTEBOOK_SETTINGS (self));
  before = self->values;
  self->values.own_d_min = d_min;
  self->values.own_ref_c = ref_c;
  self->values.own_z_k = z_k;
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++) {
    const double *own = own_value (&self->values, keys[i]);

    if (own != NULL && !fm_double_same (*own, *own_value (&before, keys[i])))
      edited (self, keys[i]);
  }
}

const FmUnits *
fm_notebook_units (void)
{
  return &fm_notebook_settings_get_default ()->values.units;
}

const char *
fm_notebook_notice (void)
{
  return fm_notebook_settings_get_default ()->values.notice;
}

const char *
fm_notebook_target_unit (FmTargetKind kind)
{
  const char *unit = fm_target_info (kind)->unit;

  return *unit != '\0' ? unit : fm_notebook_units ()->currency;
}

char *
fm_notebook_weighed_name (const char *ingredient)
{
  return g_strdup_printf (fm_notebook_units ()->us_masses ? _ ("Weighed ounces of %s")
                                                          : _ ("Weighed grams of %s"),
                          ingredient);
}

char *
fm_notebook_text (FmMeasure measure, double value, int decimals)
{
  return fm_measure_format (measure, fm_notebook_units (), value, decimals);
}

char *
fm_notebook_cell (FmMeasure measure, double value, int decimals)
{
  return fm_measure_format_cell (measure, fm_notebook_units (), value, decimals);
}

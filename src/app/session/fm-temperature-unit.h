/* fm-temperature-unit.h - the unit in which temperatures are shown and typed
 *
 * Temperatures are kept in degrees Celsius everywhere; only entries and labels convert. The
 * choice is the preference "temperature-unit" and is shared by all widgets.
 */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

#define FM_TYPE_TEMPERATURE_UNIT (fm_temperature_unit_get_type ())
G_DECLARE_FINAL_TYPE (FmTemperatureUnit, fm_temperature_unit, FM, TEMPERATURE_UNIT, GObject)

/** The one instance; "notify::fahrenheit" tells of changes. (transfer none) */
FmTemperatureUnit *fm_temperature_unit_get_default (void);
gboolean fm_temperature_unit_get_fahrenheit (FmTemperatureUnit *self);
const char *fm_temperature_unit_symbol (FmTemperatureUnit *self);
double fm_temperature_unit_to_shown (FmTemperatureUnit *self, double temp_c);
double fm_temperature_unit_from_shown (FmTemperatureUnit *self, double shown);

G_END_DECLS

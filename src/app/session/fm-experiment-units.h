/* fm-experiment-units.h - the unit in which temperatures are shown and typed
 *
 * Temperatures are kept in degrees Celsius everywhere; only entries and labels convert. The
 * choice is the preference "temperature-unit" and is shared by all widgets.
 */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_UNITS (fm_experiment_units_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentUnits, fm_experiment_units, FM, EXPERIMENT_UNITS, GObject)

/** The one instance; "notify::fahrenheit" tells of changes. (transfer none) */
FmExperimentUnits *fm_experiment_units_get_default (void);
gboolean fm_experiment_units_get_fahrenheit (FmExperimentUnits *self);
const char *fm_experiment_units_symbol (FmExperimentUnits *self);
double fm_experiment_units_to_shown (FmExperimentUnits *self, double temp_c);
double fm_experiment_units_from_shown (FmExperimentUnits *self, double shown);

G_END_DECLS

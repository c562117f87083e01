/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-settings.h - the units, the currency and the own D and z of the open notebook
 *
 * They travel with the notebook: a shared one shows the same amounts in the same units everywhere.
 * The preferences of the machine, the units chosen last, are only what a notebook without settings
 * starts with; where nobody chose, a new one follows the locale. One instance is shared by all
 * widgets, so a program has one notebook open; values are read when it opens, in its thread.
 *
 * Properties to bind: "us-masses", "fahrenheit", "currency".
 * Signals: "changed": a setting changed, or another notebook came; "edited" (char *key,
 * char *value): somebody chose another value, which the notebook has to keep.
 */
#pragma once

#include <glib-object.h>

#include "core/base/fm-measure.h"
#include "core/formula/fm-brief.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

typedef struct {
  FmUnits units;
  FmUnits local;    /* what a new notebook starts with: chosen before, else those of the place */
  double own_d_min; /* NaN = not given, as the next two */
  double own_ref_c;
  double own_z_k;
  const char *notice; /* (nullable) static: that all in it is invented */
} FmSettingValues;

#define FM_TYPE_NOTEBOOK_SETTINGS (fm_notebook_settings_get_type ())
G_DECLARE_FINAL_TYPE (FmNotebookSettings, fm_notebook_settings, FM, NOTEBOOK_SETTINGS, GObject)

/** What the machine's preferences say, and its locale; main thread. */
void fm_setting_values_init (FmSettingValues *self);
/** Reads what @notebook has over what @self has. Values that a notebook open for writing lacks are
 * written into it. Any thread. */
void fm_setting_values_read (FmSettingValues *self, FmNotebook *notebook);

/** (transfer none) */
FmNotebookSettings *fm_notebook_settings_get_default (void);
/** The values of the notebook that was just opened. */
void fm_notebook_settings_adopt (FmNotebookSettings *self, const FmSettingValues *values);
const FmSettingValues *fm_notebook_settings_get_values (FmNotebookSettings *self);
/** One value each, NaN for none: main thread. */
void
fm_notebook_settings_set_own (FmNotebookSettings *self, double d_min, double ref_c, double z_k);

/** The units of the open notebook. (transfer none) */
const FmUnits *fm_notebook_units (void);
/** What the open notebook says of itself in the window, on paper and in exports: that all in it is
 * invented. (nullable) (transfer none) */
const char *fm_notebook_notice (void);
/** In which the value of a target is written: costs in the currency. (transfer none) */
const char *fm_notebook_target_unit (FmTargetKind kind);
/** Accessible name of the entry for what was weighed of an ingredient. (transfer full) */
char *fm_notebook_weighed_name (const char *ingredient);
/** Number and unit of a measure in the units of the open notebook. (transfer full) */
char *fm_notebook_text (FmMeasure measure, double value, int decimals);
/** The number alone, for a column headed by the unit. (transfer full) */
char *fm_notebook_cell (FmMeasure measure, double value, int decimals);

G_END_DECLS

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-readings-row.h - one core reading: a time and a temperature, each checked as it is typed
 *
 * Signals: "changed" () another good value; "remove" () the remove button was pressed.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

#define FM_TYPE_READINGS_ROW (fm_readings_row_get_type ())
G_DECLARE_FINAL_TYPE (FmReadingsRow, fm_readings_row, FM, READINGS_ROW, GtkWidget)

/** @number: counts from 1; part of the accessible names. @surface_c: of what it cooked on, NaN when
 * not known. */
GtkWidget *fm_readings_row_new (guint number, const FmCoreReading *reading, double surface_c);
/** The values that count; NaN while a new row lacks one. */
const FmCoreReading *fm_readings_row_get_reading (FmReadingsRow *self);
/** Translated name of the value that was changed last. (transfer none) */
const char *fm_readings_row_get_what (FmReadingsRow *self);

G_END_DECLS

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-measure-private.h - the table of units, for the reader of measures */
#pragma once

#include "core/base/fm-measure.h"

G_BEGIN_DECLS

/** The factor to the base unit of a written unit; FALSE when @name is none of @measure. Fahrenheit
 * temperatures have the factor of their step: fm_measure_from_degrees() knows their zero. */
gboolean
fm_measure_find_unit (FmMeasure measure, const char *name, const char *currency, double *factor);
/** The factor of the unit of bare numbers. */
double fm_measure_shown_factor (FmMeasure measure, const FmUnits *units);
/** A temperature in °C from one whose degree is @factor kelvins. */
double fm_measure_from_degrees (double number, double factor);
/** The units that may be typed, as a list for a message; NULL where there are none. */
const char *fm_measure_unit_list (FmMeasure measure);

G_END_DECLS

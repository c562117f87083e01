/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-measure-type.c - FmMeasure as a type of properties, so that templates can name a measure */
#include "app/widgets/fm-measure-type.h"

GType
fm_measure_get_type (void)
{
  static gsize type;
  static const GEnumValue values[] = {
    { FM_MEASURE_NUMBER, "FM_MEASURE_NUMBER", "number" },
    { FM_MEASURE_MASS, "FM_MEASURE_MASS", "mass" },
    { FM_MEASURE_TEMPERATURE, "FM_MEASURE_TEMPERATURE", "temperature" },
    { FM_MEASURE_TEMPERATURE_STEP, "FM_MEASURE_TEMPERATURE_STEP", "temperature-step" },
    { FM_MEASURE_LENGTH, "FM_MEASURE_LENGTH", "length" },
    { FM_MEASURE_MINUTES, "FM_MEASURE_MINUTES", "minutes" },
    { FM_MEASURE_CLOCK, "FM_MEASURE_CLOCK", "clock" },
    { FM_MEASURE_PRICE, "FM_MEASURE_PRICE", "price" },
    { 0, NULL, NULL },
  };

  if (g_once_init_enter (&type))
    g_once_init_leave (&type, g_enum_register_static ("FmMeasure", values));
  return type;
}

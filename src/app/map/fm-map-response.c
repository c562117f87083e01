/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-response.c - what a map can show: the numbers that are measured of a blend */
#include "app/map/fm-map-response.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"

static const struct {
  const char *name;
  const char *unit;
  int decimals;
  double low_end; /* nothing is measured beyond; both 0 = no ends */
  double high_end;
} responses[FM_MAP_N_RESPONSES] = {
  [FM_MAP_LIKING] = { N_ ("Liking, 1 to 9"), "", 1, 1, 9 },
  [FM_MAP_RATING] = { N_ ("Rating, 1 to 10"), "", 1, 1, 10 },
  [FM_MAP_COOK_LOSS] = { N_ ("Cook loss"), "%", 1, 0, 100 },
  [FM_MAP_COST] = { N_ ("Cost"), "", 2, 0, INFINITY },
  [FM_MAP_PEAK_CORE] = { N_ ("Peak core temperature"), "°C", 1, 0, 0 },
  [FM_MAP_RAW_MASS] = { N_ ("Raw patty"), "g", 1, 0, INFINITY },
  [FM_MAP_SALT] = { N_ ("Salt"), "%", 2, 0, 100 },
  [FM_MAP_SALT_MINUTES] = { N_ ("Time from salting to cooking"), N_ ("min"), 0, 0, INFINITY },
  [FM_MAP_REST_MINUTES] = { N_ ("Rest"), N_ ("min"), 1, 0, INFINITY },
  [FM_MAP_MEAT_TEMP] = { N_ ("Meat temperature at grinding"), "°C", 1, 0, 0 },
  [FM_MAP_SURFACE_TEMP] = { N_ ("Surface temperature"), "°C", 0, 0, 0 },
  [FM_MAP_MINUTES] = { N_ ("Time on the heat"), N_ ("min"), 1, 0, INFINITY },
};

const char *
fm_map_response_name (FmMapResponse response)
{
  return _ (responses[response].name);
}

char *
fm_map_response_unit (FmMapResponse response)
{
  if (response != FM_MAP_COST)
    return g_strdup (*responses[response].unit != '\0' ? _ (responses[response].unit) : "");
  return g_strdup_printf (_ ("%s/kg"), fm_notebook_units ()->currency);
}

int
fm_map_response_decimals (FmMapResponse response)
{
  return responses[response].decimals;
}

void
fm_map_response_ends (FmMapResponse response, double *low, double *high)
{
  *low = responses[response].low_end;
  *high = responses[response].high_end;
}

/* fm-map-response.h - what a map can show: the numbers that are measured of a blend */
#pragma once

#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

typedef enum {
  FM_MAP_LIKING,       /* 1 .. 9, of opened tastings; session and taster as blocks */
  FM_MAP_RATING,       /* 1 .. 10, of experiments */
  FM_MAP_COOK_LOSS,    /* % of the raw mass, of experiments */
  FM_MAP_COST,         /* per kg edible, of versions; from prices, not measured */
  FM_MAP_PEAK_CORE,    /* C, of experiments */
  FM_MAP_RAW_MASS,     /* mean raw patty, g */
  FM_MAP_SALT,         /* % */
  FM_MAP_SALT_MINUTES, /* before cooking */
  FM_MAP_REST_MINUTES,
  FM_MAP_MEAT_TEMP,    /* C */
  FM_MAP_SURFACE_TEMP, /* C */
  FM_MAP_MINUTES,      /* on the heat, both sides */
  FM_MAP_N_RESPONSES,
} FmMapResponse;

/** Translated: "liking", "cook loss" ... */
const char *fm_map_response_name (FmMapResponse response);
/** "%" ...; "" where there is none; cost in the person's currency. Returns: (transfer full). */
char *fm_map_response_unit (FmMapResponse response);
int fm_map_response_decimals (FmMapResponse response);
/** What can be measured at all; @high may be INFINITY, both 0 = no ends. */
void fm_map_response_ends (FmMapResponse response, double *low, double *high);

/** What an experiment says of it; NaN when it was not recorded or is no matter of experiments. */
double fm_map_response_of_experiment (FmMapResponse response, const FmExperiment *experiment);

G_END_DECLS

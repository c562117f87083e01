/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-heat-filter.h - what the readings of a cook tell of its pan, and what follows for the centre
 *
 * Two numbers of the slab model (fm-heat.h) are not known when a patty meets the heat: how well the
 * pan passes its heat on, and how hot the pan is. A belief holds both, the first as its logarithm,
 * as a normal distribution. Each reading moves it: the top of the posterior is found (Gauss-Newton,
 * the model's slopes by differences), and nodes about it, weighed by the posterior, give its mean
 * and spread, as the model bends too much for the curvature at the top alone (Gelman et al.,
 * Bayesian Data Analysis, 3rd ed. 2013, sections 4.1 and 10.4; from memory). As both numbers stay
 * the same through one patty, all readings of it are taken together.
 *
 * The spread is that of pan and contact alone. What the model leaves out (shrinkage, moving fat, a
 * probe off the centre) comes on top: fm_heat_forecast_half_band_k() adds a guess of it, which
 * rests on one published end point. An estimate never replaces a thermometer.
 */
#pragma once

#include "core/heat/fm-heat.h"

G_BEGIN_DECLS

/* Spreads before a reading: a factor of 1.6 for the contact, 15 K for the pan; that of a reading
 * with a hand-held thermometer: our choices, no source. */
#define FM_HEAT_LOG_CONTACT_SD 0.5
#define FM_HEAT_PAN_SD_K 15.0
#define FM_HEAT_READING_SD_K 1.0
/* Readings that lie further from the model than this, root mean square, are no readings of this
 * model: four times a thermometer's spread (our choice, no source). */
#define FM_HEAT_MISFIT_K 4.0
/* The middle 90 in 100 of a normal distribution. */
#define FM_HEAT_BAND_90 1.6448536269514722

typedef struct {
  double log_contact; /* natural logarithm of W/(m2 K) */
  double pan_c;
  double var_contact;
  double var_pan; /* K2 */
  double covariance;
  guint n_readings; /* that it rests on */
  double misfit_k;  /* root mean square of the readings about the model; 0 without one */
} FmHeatBelief;

/** Before any reading. */
void fm_heat_belief_init (FmHeatBelief *self, double contact_w_m2k, double pan_c);
/** For the next patty on the same pan: a tenth in contact and 5 K may have changed (our choice, no
 * source). */
void fm_heat_belief_age (FmHeatBelief *self);
/**
 * fm_heat_belief_update:
 * @setup: sizes, start and schedule; its contact and pan do not count
 * @readings: FmCoreReading; those after the end of @setup do not count
 * @posterior: (out): may be @prior
 *
 * Some tenths of a second: run it off the main loop. The messages of fm_heat_setup_check().
 */
gboolean fm_heat_belief_update (const FmHeatBelief *prior,
                                const FmHeatSetup *setup,
                                const GArray *readings,
                                FmHeatBelief *posterior,
                                GError **error);

typedef struct {
  double time_s;   /* to be filled in */
  double centre_c; /* (out) NaN after the end of the setup */
  double sd_k;     /* (out) */
} FmHeatForecast;

/** The centre at some moments of @setup under @belief: mean and spread of the model over its normal
 * distribution, by three points of Gauss and Hermite along each axis (Abramowitz & Stegun, table
 * 25.10; from memory), because the model bends within it. */
gboolean fm_heat_forecast (const FmHeatBelief *belief,
                           const FmHeatSetup *setup,
                           FmHeatForecast *forecasts,
                           guint n,
                           GError **error);

/* The model's own error, as a part of the rise since the start. One published end point could be
 * checked: there the model is 8 K too warm after a rise of 75 K (tests/core/heat). Our choice. */
#define FM_HEAT_MODEL_PART 0.1

/** Half the band that holds nine of ten, K: spread of pan and contact, and the model's own error.
 */
double fm_heat_forecast_half_band_k (const FmHeatForecast *forecast, double start_c);

G_END_DECLS

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-heat.h - centre temperature of a patty on a dry pan: an estimate
 *
 * One-dimensional transient conduction through the thickness: finite volumes, fully implicit in
 * time. Heat enters the face on the pan through a contact coefficient and leaves the upper face to
 * the air; turning swaps them; resting gives both faces to the air. Properties follow composition
 * and temperature (fm-thermal-properties.h). A layer that reaches the boiling point stays there
 * until its own water has boiled off; that water counts as loss, and the layer is then dry crust.
 *
 * The estimate never replaces a thermometer: show fm_heat_label() and fm_heat_assumptions()
 * beside it.
 */
#pragma once

#include "core/experiment/fm-experiment.h"
#include "core/base/fm-stop.h"
#include "core/heat/fm-thermal-properties.h"

G_BEGIN_DECLS

/* Contact coefficient before a fit, W/(m2 K). Published for double-sided contact grills at 177 to
 * 204 °C: 250 to 650, rising and then falling (abstract, read). A dry pan under a patty's own
 * weight is taken at the low end. */
#define FM_HEAT_CONTACT_DEFAULT_W_M2K 250.0
#define FM_HEAT_CONTACT_MIN_W_M2K 20.0
#define FM_HEAT_CONTACT_MAX_W_M2K 2000.0
/* Free convection and radiation off a warm face: common practice, no source. */
#define FM_HEAT_AIR_DEFAULT_W_M2K 15.0

/** Start from fm_heat_setup_init(). Temperatures °C. */
typedef struct {
  FmThermalMix mix;
  double mass_g; /* of the three, one may be NaN and follows from the other two */
  double diameter_mm;
  double thickness_mm;
  double start_c; /* above 0: freezing is not modelled */
  double pan_c;   /* surface of the pan, held */
  double air_c;
  double contact_w_m2k;
  double air_w_m2k;
  double boiling_c; /* of water at this altitude */
  GArray *turns_s;  /* double, ascending: times of turning; owned; may be empty */
  double off_s;     /* taken off the pan */
  double rest_s;    /* watched after that; 0 = none */
  guint n_cells;    /* layers through the thickness, odd */
  double step_s;    /* longest time step */
} FmHeatSetup;

typedef struct {
  guint n; /* points in time, the start included */
  double *time_s;
  double *centre_c;  /* mid thickness */
  double *coldest_c; /* of all layers */
  double off_s;
  double off_centre_c;  /* centre when taken off the pan */
  double peak_centre_c; /* highest centre, rest included */
  double peak_s;
  double evaporated_g;
  double evaporated_pct; /* of the raw mass; drip of fat and juice comes on top */
  double crust_mm;       /* dried layers, both faces */
  double mass_g;         /* as used */
  double diameter_mm;
  double thickness_mm;
  double heat_in_j;     /* through both faces, losses to the air subtracted */
  double heat_stored_j; /* warmer layers */
  double heat_boiled_j; /* of what evaporated: latent, and as water from 0 °C */
} FmHeatResult;

/** Room temperature air, defaults above, 100 °C boiling, no turn, NaN for what the cook states
 * (mass, diameter, thickness, start, pan, off). */
void fm_heat_setup_init (FmHeatSetup *self);
/** Frees what @self owns. */
void fm_heat_setup_clear (FmHeatSetup *self);
/** Deep copy; @copy need not be initialised. */
void fm_heat_setup_copy (const FmHeatSetup *self, FmHeatSetup *copy);
/** Takes from @experiment what it records: surface temperature, meat temperature, side times (one
 * turn after side 1), rest, mean patty mass, diameter and thickness. What is not recorded stays as
 * it is. */
void fm_heat_setup_from_experiment (FmHeatSetup *self, const FmExperiment *experiment);
/** Messages name the field. OUT_OF_RANGE, UNKNOWN_VALUE. */
gboolean fm_heat_setup_check (const FmHeatSetup *self, GError **error);

/**
 * Some hundredths of a second with the default grid of 161 layers and 0.5 s. Against 401 layers and
 * 0.1 s its own error at the centre is up to 0.4 °C over 24 ordinary patties (10 to 25 mm, pan of
 * 160 to 240 °C), and a grid twice as fine in both changes the highest centre by less than that.
 */
FmHeatResult *fm_heat_predict (const FmHeatSetup *setup, GError **error);
void fm_heat_result_free (FmHeatResult *self);
/** Centre at @time_s, straight between points; NaN outside. */
double fm_heat_centre_at (const FmHeatResult *self, double time_s);
/** First time the centre is at @temp_c, s; NaN when it never is. */
double fm_heat_time_to (const FmHeatResult *self, double temp_c);

/** What a fit of the contact coefficient found. */
typedef struct {
  double contact_w_m2k;
  double rms_c;        /* between the fitted curve and the readings */
  double rms_before_c; /* with the setup's own coefficient */
  guint n_readings;
  gboolean at_bound; /* the search ended at FM_HEAT_CONTACT_MIN or MAX: no real fit */
} FmHeatFit;

/**
 * fm_heat_fit_contact:
 * @readings: FmCoreReading; those after the end of @setup's rest do not count
 *
 * Least squares over the coefficient alone, a search along its logarithm. Needs three readings
 * (EMPTY). Some seconds at most: run it off the main loop. @stop: (nullable): STOPPED.
 */
gboolean fm_heat_fit_contact (const FmHeatSetup *setup,
                              const GArray *readings,
                              const FmStop *stop,
                              FmHeatFit *fit,
                              GError **error);

/** "Estimate. ... never replaces a thermometer." Translated. */
const char *fm_heat_label (void);
/** One sentence each, to be listed on the page, in the order to show. Translated.
 * Returns: (transfer full). */
GStrv fm_heat_assumptions (const FmHeatSetup *setup);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmHeatResult, fm_heat_result_free)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FmHeatSetup, fm_heat_setup_clear)

G_END_DECLS

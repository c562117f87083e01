/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/demo/fm-demo-log.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/demo/fm-demo-photo.h"

/* 2025-03-03 00:00 UTC, a Monday. */
#define FIRST_DAY 1740960000
#define SECONDS_PER_DAY 86400
#define READING_EVERY_S 60.0
#define PHOTO_AFTER_S 600
/* Heat goes on to the core after the pan: invented, for the shape of the curve. */
#define CARRY_OVER_C 2.6

gint64
fm_demo_moment (int day, int hour)
{
  return FIRST_DAY + (gint64)day * SECONDS_PER_DAY + hour * 3600;
}

/* A small generator of our own (Numerical Recipes' constants), the same on every machine. */
static double
next_uniform (guint32 *state)
{
  *state = *state * 1664525u + 1013904223u;
  return (*state >> 8) / 16777216.0;
}

/* Sum of twelve uniforms less six: mean 0, standard deviation 1. */
static double
next_normal (guint32 *state)
{
  double sum = -6.0;

  for (int i = 0; i < 12; i++)
    sum += next_uniform (state);
  return sum;
}

/* As a scale or a probe shows it. */
static double
to_step (double value, double step)
{
  return round (value / step) * step;
}

static double
recorded_or_unknown (double value)
{
  return value > 0 ? value : NAN;
}

static void
weigh_lines (FmExperiment *experiment, guint32 *state)
{
  for (guint i = 0; i < experiment->weighings->len; i++) {
    FmWeighing *weighing = &g_array_index (experiment->weighings, FmWeighing, i);
    double weighed_g = weighing->planned_g * (1.0 + 0.004 * next_normal (state));
    weighing->weighed_g = to_step (weighed_g, weighed_g < 50.0 ? 0.1 : 1.0);
  }
}

static void
weigh_patties (FmExperiment *experiment, const FmDemoExperiment *making, guint32 *state)
{
  for (guint i = 0; i < experiment->patties->len; i++) {
    FmPattyMass *patty = &g_array_index (experiment->patties, FmPattyMass, i);
    double loss_pct = making->loss_pct + 0.9 * next_normal (state);
    patty->raw_g =
        to_step (experiment->patty_target_g + making->patty_sd_g * next_normal (state), 0.1);
    if (making->loss_pct > 0)
      patty->cooked_g = to_step (patty->raw_g * (1.0 - loss_pct / 100.0), 0.1);
  }
}

static void
add_reading (FmExperiment *experiment, double time_s, double temp_c)
{
  FmCoreReading reading = { time_s, to_step (temp_c, 0.1) };

  g_array_append_val (experiment->core_readings, reading);
}

/* Slow at first, fastest in the middle, then over the top during the rest. */
static void
read_core (FmExperiment *experiment, const FmDemoExperiment *making, guint32 *state)
{
  double total_s = (making->minutes_side_1 + making->minutes_side_2) * 60.0;
  double end_c = making->peak_core_c - CARRY_OVER_C;

  if (making->peak_core_c <= 0)
    return;
  for (double time_s = 0; time_s < total_s; time_s += READING_EVERY_S) {
    double t = time_s / total_s;
    double rise = 0.4 * t + 0.6 * t * t * (3.0 - 2.0 * t);
    add_reading (experiment, time_s,
                 making->meat_temp_c + (end_c - making->meat_temp_c) * rise +
                     0.2 * next_normal (state));
  }
  add_reading (experiment, total_s, end_c);
  add_reading (experiment, total_s + 60.0, making->peak_core_c);
  add_reading (experiment, total_s + 180.0, making->peak_core_c - 1.4);
}

static FmExperiment *
make_experiment (const FmDemoExperiment *making, const FmDemoMade *made, guint32 seed)
{
  FmExperiment *experiment = fm_experiment_new ();
  guint32 state = seed * 2654435761u + 12345u;

  fm_experiment_plan (experiment, made->formula);
  experiment->version_id = made->version_id;
  experiment->title = g_strdup (_ (making->title));
  experiment->notes = g_strdup (_ (making->notes));
  experiment->made_at = fm_demo_moment (making->day, 10 + (int)(seed % 6));
  experiment->meat_temp_c = making->meat_temp_c;
  experiment->plate_mm = making->plate_mm;
  experiment->grind_passes = making->passes;
  if (making->salt_pct > 0)
    experiment->surface_salt_pct = making->salt_pct;
  experiment->salt_minutes_before = recorded_or_unknown (making->salt_minutes_before);
  experiment->method = making->blend == 2 ? FM_COOK_PATTY_BROILED : FM_COOK_PATTY_PAN_BROILED;
  /* The process of the version planned one already. */
  g_free (experiment->surface);
  experiment->surface = making->surface != NULL ? g_strdup (_ (making->surface)) : NULL;
  experiment->surface_temp_c = recorded_or_unknown (making->surface_temp_c);
  experiment->minutes_side_1 = recorded_or_unknown (making->minutes_side_1);
  experiment->minutes_side_2 = recorded_or_unknown (making->minutes_side_2);
  experiment->rest_minutes = recorded_or_unknown (making->rest_minutes);
  experiment->rating = making->rating;
  weigh_lines (experiment, &state);
  weigh_patties (experiment, making, &state);
  read_core (experiment, making, &state);
  return experiment;
}

static gboolean
add_picture (FmNotebook *notebook,
             gint64 experiment_id,
             const FmDemoPhoto *photo,
             const char *caption,
             FmPhotoView view,
             GError **error)
{
  g_autoptr (GBytes) jpeg = fm_demo_photo_paint (photo, error);
  const gint64 id =
      jpeg != NULL ? fm_photos_add (notebook, experiment_id, jpeg, NULL, NULL, error) : 0;

  return id != 0 && fm_photos_describe (notebook, id, caption, view, error);
}

static gboolean
add_pictures (FmNotebook *notebook,
              gint64 experiment_id,
              gint64 made_at,
              const FmDemoExperiment *making,
              const FmDemoMade *made,
              guint32 seed,
              GError **error)
{
  const struct {
    FmDemoPictures flag;
    FmDemoPhotoKind kind;
    FmPhotoView view;
    gboolean portrait;
    const char *caption;
  } pictures[] = {
    { FM_DEMO_PICTURE_RAW, FM_DEMO_PHOTO_RAW, FM_PHOTO_VIEW_RAW, FALSE,
      _ ("Formed, raw (painted picture)") },
    { FM_DEMO_PICTURE_SEARED, FM_DEMO_PHOTO_SEARED, FM_PHOTO_VIEW_CRUST, FALSE,
      _ ("Seared (painted picture)") },
    { FM_DEMO_PICTURE_CUT, FM_DEMO_PHOTO_CUT_FACE, FM_PHOTO_VIEW_CROSS_SECTION, FALSE,
      _ ("Cut face (painted picture)") },
    { FM_DEMO_PICTURE_CUT_UPRIGHT, FM_DEMO_PHOTO_CUT_FACE, FM_PHOTO_VIEW_CROSS_SECTION, TRUE,
      _ ("Cut face, camera held upright (painted picture)") },
  };

  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++) {
    if ((making->pictures & pictures[i].flag) == 0)
      continue;
    const FmDemoPhoto photo = { .kind = pictures[i].kind,
                                .seed = seed * 8 + i,
                                .fat_pct = isnan (made->fat_pct) ? 20.0 : made->fat_pct,
                                .peak_core_c = making->peak_core_c,
                                .portrait = pictures[i].portrait,
                                .taken_at = made_at + PHOTO_AFTER_S * (i + 1) };
    if (!add_picture (notebook, experiment_id, &photo, pictures[i].caption, pictures[i].view,
                      error))
      return FALSE;
  }
  return TRUE;
}

gboolean
fm_demo_log_add (FmNotebook *notebook,
                 const FmDemoExperiment *making,
                 const FmDemoMade *made,
                 guint32 seed,
                 GError **error)
{
  g_autoptr (FmExperiment) experiment = make_experiment (making, made, seed);

  return fm_experiments_save (notebook, experiment, error) &&
         add_pictures (notebook, experiment->id, experiment->made_at, making, made, seed, error);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-estimate.c - what the heat model thinks of each portion while it cooks */
#include "app/kitchen/fm-kitchen-estimate.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-store-task.h"
#include "core/heat/fm-heat-filter.h"
#include "core/kitchen/fm-kitchen-land.h"

/* A coarse grid is enough beside the spread, and ten times faster. */
#define N_CELLS 41
#define STEP_S 1.0
/* Estimates are shown in whole degrees, which change no sooner: our choice, no source. */
#define STALE_S 2.0

struct _FmKitchenEstimate {
  GObject parent_instance;

  FmProcess *process; /* (nullable) */
  FmCookStart *start; /* (nullable) while it is read */
  GCancellable *cancellable;
  FmHeatBelief pan; /* before the next portion */
  FmHeatBelief priors[FM_KITCHEN_MAX_PORTIONS];
  gboolean has_prior[FM_KITCHEN_MAX_PORTIONS];
  gboolean is_learnt[FM_KITCHEN_MAX_PORTIONS]; /* the pan has what it told */
  guint n_events[FM_KITCHEN_MAX_PORTIONS];     /* that its last estimate knows */
  FmKitchenMoment at[FM_KITCHEN_MAX_PORTIONS]; /* of its last estimate */
  guint last;                                  /* portion worked on last */
  gboolean is_working;
};

G_DEFINE_FINAL_TYPE (FmKitchenEstimate, fm_kitchen_estimate, G_TYPE_OBJECT)

enum {
  ESTIMATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

typedef struct {
  FmHeatSetup setup;
  GArray *readings;
  FmHeatBelief prior;
  FmHeatBelief belief;         /* (out) */
  FmHeatForecast forecasts[2]; /* now, and at the planned end */
  int portion;
  gboolean is_over; /* off the heat: what it tells of the pan is whole */
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  fm_heat_setup_clear (&job->setup);
  g_array_unref (job->readings);
  g_free (job);
}

static gpointer
run (FmNotebook *none, gpointer data, GCancellable *cancellable, GError **error)
{
  Job *job = data;

  return GINT_TO_POINTER (
      fm_heat_belief_update (&job->prior, &job->setup, job->readings, &job->belief, error) &&
      fm_heat_forecast (&job->belief, &job->setup, job->forecasts, G_N_ELEMENTS (job->forecasts),
                        error));
}

/* "48 °C (43 to 53)": the middle, and where nine of ten lie. */
static char *
band_text (const FmHeatForecast *forecast, double start_c)
{
  const double half_k = fm_heat_forecast_half_band_k (forecast, start_c);
  g_autofree char *middle = fm_notebook_text (FM_MEASURE_TEMPERATURE, forecast->centre_c, 0);
  g_autofree char *low = fm_measure_format_cell (FM_MEASURE_TEMPERATURE, fm_notebook_units (),
                                                 forecast->centre_c - half_k, 0);
  g_autofree char *high = fm_measure_format_cell (FM_MEASURE_TEMPERATURE, fm_notebook_units (),
                                                  forecast->centre_c + half_k, 0);

  /* TRANSLATORS: a temperature, then the band that holds nine of ten */
  return g_strdup_printf (_ ("%s (%s to %s)"), middle, low, high);
}

static char *
misfit_text (const Job *job)
{
  g_autofree char *apart = fm_notebook_text (FM_MEASURE_TEMPERATURE_STEP, job->belief.misfit_k, 0);

  return g_strdup_printf (_ ("No estimate. The readings lie %s from the model: check the probe's "
                             "place, the patty's size and start, and the pan."),
                          apart);
}

static char *
estimate_text (const Job *job)
{
  g_autofree char *now = band_text (&job->forecasts[0], job->setup.start_c);
  g_autofree char *end = band_text (&job->forecasts[1], job->setup.start_c);
  const guint n = job->readings->len;
  g_autofree char *basis =
      n > 0 ? g_strdup_printf (ngettext ("after %u reading", "after %u readings", n), n)
            : g_strdup (_ ("before any reading"));

  /* TRANSLATORS: estimate of the centre now and at the planned end, each with its band */
  return g_strdup_printf (_ ("Estimate %s: %s, at the planned end %s"), basis, now, end);
}

static void
learn (FmKitchenEstimate *self, const Job *job)
{
  if (!job->is_over || self->is_learnt[job->portion])
    return;
  self->is_learnt[job->portion] = TRUE;
  if (job->belief.n_readings == 0 || job->belief.misfit_k > FM_HEAT_MISFIT_K)
    return;
  self->pan = job->belief;
  fm_heat_belief_age (&self->pan);
}

static void
done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmKitchenEstimate *self = FM_KITCHEN_ESTIMATE (source);
  const Job *job = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  self->is_working = FALSE;
  if (fm_store_task_finish (result, &error) != NULL) {
    learn (self, job);
    text = job->belief.misfit_k > FM_HEAT_MISFIT_K ? misfit_text (job) : estimate_text (job);
  } else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    text = g_strdup_printf (_ ("No estimate. %s"), error->message);
  }
  if (text != NULL)
    g_signal_emit (self, signals[ESTIMATED], 0, job->portion, text);
}

static void
fill (double *place, const FmProcess *process, FmProcessField field)
{
  if (isnan (*place) && process != NULL)
    *place = process->numbers[field];
}

static void
started_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmKitchenEstimate) self = data;
  FmHeatSetup *setup;

  self->start = fm_cook_job_start_finish (result, NULL);
  if (self->start == NULL)
    return;
  setup = &self->start->setup;
  fill (&setup->start_c, self->process, FM_PROCESS_MEAT_TEMP);
  fill (&setup->pan_c, self->process, FM_PROCESS_SURFACE_TEMP);
  fill (&setup->diameter_mm, self->process, FM_PROCESS_DIAMETER);
  if (isnan (setup->diameter_mm) || isnan (setup->mass_g))
    fill (&setup->thickness_mm, self->process, FM_PROCESS_THICKNESS);
  setup->n_cells = N_CELLS;
  setup->step_s = STEP_S;
  fm_heat_belief_init (&self->pan, setup->contact_w_m2k, setup->pan_c);
}

static void
fm_kitchen_estimate_finalize (GObject *object)
{
  FmKitchenEstimate *self = FM_KITCHEN_ESTIMATE (object);

  g_cancellable_cancel (self->cancellable);
  g_object_unref (self->cancellable);
  g_clear_pointer (&self->process, fm_process_free);
  fm_cook_start_free (self->start);
  G_OBJECT_CLASS (fm_kitchen_estimate_parent_class)->finalize (object);
}

static void
fm_kitchen_estimate_class_init (FmKitchenEstimateClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_kitchen_estimate_finalize;
  signals[ESTIMATED] = g_signal_new ("estimated", FM_TYPE_KITCHEN_ESTIMATE, G_SIGNAL_RUN_LAST, 0,
                                     NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_INT, G_TYPE_STRING);
}

static void
fm_kitchen_estimate_init (FmKitchenEstimate *self)
{
  self->cancellable = g_cancellable_new ();
}

FmKitchenEstimate *
fm_kitchen_estimate_new (FmNotebook *notebook,
                         const FmExperiment *experiment,
                         const FmProcess *process)
{
  FmKitchenEstimate *self = g_object_new (FM_TYPE_KITCHEN_ESTIMATE, NULL);

  self->process = process != NULL ? fm_process_copy (process) : NULL;
  fm_cook_job_start_async (notebook, experiment, self->cancellable, started_cb,
                           g_object_ref (self));
  return self;
}

/* The schedule as it was so far, and as planned from now on. Returns: s from the heat to now. */
static double
set_schedule (FmHeatSetup *setup,
              const FmKitchenPortion *portion,
              const FmKitchenPlan *plan,
              const FmKitchenMoment *now)
{
  const double now_s = fm_kitchen_span (&portion->on, now).s;
  const double side_1_s = plan->planned_s[FM_KITCHEN_TIMER_SIDE_1];
  const double side_2_s = plan->planned_s[FM_KITCHEN_TIMER_SIDE_2];
  double turn_s = fmax (side_1_s, now_s + STEP_S);

  g_array_set_size (setup->turns_s, 0);
  g_array_append_vals (setup->turns_s, portion->turns_s->data, portion->turns_s->len);
  setup->rest_s = 0.0;
  if (!fm_kitchen_is_on_heat (portion)) {
    setup->off_s = fm_kitchen_span (&portion->on, &portion->off).s;
    setup->rest_s = fmax (now_s - setup->off_s, plan->planned_s[FM_KITCHEN_TIMER_REST]);
    return now_s;
  }
  if (portion->turns_s->len == 0)
    g_array_append_val (setup->turns_s, turn_s);
  else
    turn_s = g_array_index (portion->turns_s, double, 0);
  setup->off_s = fmax (turn_s + side_2_s, now_s + STEP_S);
  return now_s;
}

static GArray *
read_readings (const GPtrArray *events, const FmKitchenPortion *portion, int number)
{
  g_autofree gboolean *taken_back = fm_kitchen_taken_back (events);
  GArray *readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  double last_s = -INFINITY;

  for (guint i = 0; i < events->len; i++) {
    const FmKitchenEvent *event = g_ptr_array_index (events, i);
    const gboolean is_probe = event->kind == FM_KITCHEN_PROBE;
    const FmCoreReading reading = { fm_kitchen_span (&portion->on, &event->at).s, event->value };

    if (taken_back[i] || event->portion != number ||
        (!is_probe && event->kind != FM_KITCHEN_CORE) ||
        (is_probe && reading.time_s < last_s + FM_KITCHEN_PROBE_EVERY_S))
      continue;
    if (is_probe)
      last_s = reading.time_s;
    g_array_append_val (readings, reading);
  }
  return readings;
}

/* Something happened to the portion, or to none in particular, that its estimate does not know. */
static gboolean
has_news (FmKitchenEstimate *self, const GPtrArray *events, int portion)
{
  for (guint i = self->n_events[portion]; i < events->len; i++) {
    const FmKitchenEvent *event = g_ptr_array_index (events, i);

    if (event->portion == portion || event->portion < 0)
      return TRUE;
  }
  return FALSE;
}

static gboolean
is_stale (FmKitchenEstimate *self, int portion, const FmKitchenMoment *now)
{
  return !self->has_prior[portion] || fm_kitchen_span (&self->at[portion], now).s >= STALE_S;
}

static gboolean
wants_work (FmKitchenEstimate *self, const FmKitchenState *state, int portion)
{
  const FmKitchenPortion *one = &state->portions[portion];

  return fm_kitchen_is_on_heat (one) || one->stage == FM_STAGE_RESTING ||
         (one->stage == FM_STAGE_RESTED && !self->is_learnt[portion]);
}

/* The next after the last one, round and round, but what has news comes first; -1 = none. */
static int
find_portion (FmKitchenEstimate *self,
              const GPtrArray *events,
              const FmKitchenState *state,
              const FmKitchenMoment *now)
{
  int stale = -1;

  for (guint i = 1; i <= state->n_portions; i++) {
    const int portion = (int)((self->last + i) % state->n_portions);

    if (!wants_work (self, state, portion))
      continue;
    if (has_news (self, events, portion))
      return portion;
    if (stale < 0 && is_stale (self, portion, now))
      stale = portion;
  }
  return stale;
}

static Job *
job_new (FmKitchenEstimate *self,
         const GPtrArray *events,
         const FmKitchenState *state,
         const FmKitchenPlan *plan,
         const FmKitchenMoment *now,
         int number)
{
  const FmKitchenPortion *portion = &state->portions[number];
  Job *job = g_new0 (Job, 1);
  double now_s;

  fm_heat_setup_copy (&self->start->setup, &job->setup);
  if (!isnan (portion->raw_g))
    job->setup.mass_g = portion->raw_g;
  now_s = set_schedule (&job->setup, portion, plan, now);
  job->readings = read_readings (events, portion, number);
  job->prior = self->priors[number];
  job->portion = number;
  job->is_over = !fm_kitchen_is_on_heat (portion);
  job->setup.pan_c = job->prior.pan_c;
  job->forecasts[0].time_s = fmin (now_s, job->setup.off_s + job->setup.rest_s);
  job->forecasts[1].time_s = job->setup.off_s + job->setup.rest_s;
  return job;
}

void
fm_kitchen_estimate_go_on (FmKitchenEstimate *self,
                           const GPtrArray *events,
                           const FmKitchenState *state,
                           const FmKitchenPlan *plan,
                           const FmKitchenMoment *now)
{
  int portion;

  g_return_if_fail (FM_IS_KITCHEN_ESTIMATE (self));
  if (self->is_working || self->start == NULL)
    return;
  portion = find_portion (self, events, state, now);
  if (portion < 0)
    return;
  if (!self->has_prior[portion]) {
    self->priors[portion] = self->pan;
    self->has_prior[portion] = TRUE;
  }
  self->n_events[portion] = events->len;
  self->at[portion] = *now;
  self->last = (guint)portion;
  self->is_working = TRUE;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .run = run,
      .data = job_new (self, events, state, plan, now, portion),
      .free_data = job_free,
      .cancellable = self->cancellable,
      .done = done_cb,
  });
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-book.c - the log of one cook: each event is written as it happens and lands in the
 * experiment */
#include "app/kitchen/fm-kitchen-book.h"

#include <math.h>

#include "app/kitchen/fm-kitchen-clock.h"
#include "app/session/fm-store-task.h"
#include "store/fm-kitchen-log.h"

#define TRY_AGAIN_MS 2000

struct _FmKitchenBook {
  GObject parent_instance;

  FmExperimentDocument *document;
  GPtrArray *events;
  FmKitchenState *state;
  FmKitchenMoment seen; /* when the clocks were last looked at */
  guint n_written;
  guint retry_id;
  gboolean is_read;
  gboolean is_writing;
};

G_DEFINE_FINAL_TYPE (FmKitchenBook, fm_kitchen_book, G_TYPE_OBJECT)

enum {
  CHANGED,
  UNWRITTEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void write_next (FmKitchenBook *self);

typedef struct {
  gint64 experiment_id;
  FmKitchenEvent *event; /* (nullable) */
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  fm_kitchen_event_free (job->event);
  g_free (job);
}

static FmExperiment *
get_experiment (FmKitchenBook *self)
{
  return fm_experiment_document_get_experiment (self->document);
}

static Job *
job_new (FmKitchenBook *self, const FmKitchenEvent *event)
{
  Job *job = g_new0 (Job, 1);

  job->experiment_id = get_experiment (self)->id;
  job->event = event != NULL ? fm_kitchen_event_copy (event) : NULL;
  return job;
}

static void
work_out_state (FmKitchenBook *self)
{
  fm_kitchen_state_free (self->state);
  self->state = fm_kitchen_state_new (self->events, fm_kitchen_n_portions (get_experiment (self)));
}

static void
land (FmKitchenBook *self)
{
  if (fm_experiment_document_is_editable (self->document) &&
      fm_kitchen_land (self->events, get_experiment (self)))
    fm_experiment_document_touch (self->document);
}

static gpointer
run_write (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Job *job = data;

  return GINT_TO_POINTER (fm_kitchen_log_add (notebook, job->experiment_id, job->event, error));
}

static gboolean
try_again_cb (gpointer data)
{
  FmKitchenBook *self = data;

  self->retry_id = 0;
  write_next (self);
  return G_SOURCE_REMOVE;
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmKitchenBook *self = FM_KITCHEN_BOOK (source);
  g_autoptr (GError) error = NULL;

  self->is_writing = FALSE;
  if (fm_store_task_finish (result, &error) == NULL) {
    g_signal_emit (self, signals[UNWRITTEN], 0, error->message);
    self->retry_id = g_timeout_add (TRY_AGAIN_MS, try_again_cb, self);
    return;
  }
  self->n_written++;
  if (self->n_written == self->events->len)
    g_signal_emit (self, signals[UNWRITTEN], 0, NULL);
  write_next (self);
}

static void
write_next (FmKitchenBook *self)
{
  if (self->is_writing || self->retry_id != 0 || self->n_written >= self->events->len)
    return;
  self->is_writing = TRUE;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_experiment_document_get_notebook (self->document),
      .run = run_write,
      .data = job_new (self, g_ptr_array_index (self->events, self->n_written)),
      .free_data = job_free,
      .done = written_cb,
  });
}

static gpointer
run_read (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Job *job = data;

  return fm_kitchen_log_load (notebook, job->experiment_id, error);
}

/* What the machine did while nobody looked is noted first. */
static void
note_gap (FmKitchenBook *self, const FmKitchenMoment *before)
{
  FmKitchenMoment now;
  FmKitchenKind kind;
  double value;

  fm_kitchen_clock_now (&now);
  if (fm_kitchen_gap (before, &now, &kind, &value))
    fm_kitchen_book_add (self, kind, -1, value, NULL);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmKitchenBook *self = FM_KITCHEN_BOOK (source);
  g_autoptr (GError) error = NULL;
  GPtrArray *events = fm_store_task_finish (result, &error);

  if (events == NULL) {
    g_signal_emit (self, signals[UNWRITTEN], 0, error->message);
    return;
  }
  g_ptr_array_unref (self->events);
  self->events = events;
  self->n_written = events->len;
  self->is_read = TRUE;
  work_out_state (self);
  if (events->len > 0)
    note_gap (self, &((FmKitchenEvent *)g_ptr_array_index (events, events->len - 1))->at);
  fm_kitchen_book_add (self, FM_KITCHEN_OPENED, -1, (double)NAN, NULL);
}

static void
fm_kitchen_book_dispose (GObject *object)
{
  FmKitchenBook *self = FM_KITCHEN_BOOK (object);

  g_clear_handle_id (&self->retry_id, g_source_remove);
  G_OBJECT_CLASS (fm_kitchen_book_parent_class)->dispose (object);
}

static void
fm_kitchen_book_finalize (GObject *object)
{
  FmKitchenBook *self = FM_KITCHEN_BOOK (object);

  g_clear_object (&self->document);
  g_ptr_array_unref (self->events);
  fm_kitchen_state_free (self->state);
  G_OBJECT_CLASS (fm_kitchen_book_parent_class)->finalize (object);
}

static void
fm_kitchen_book_class_init (FmKitchenBookClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_book_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_kitchen_book_finalize;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_KITCHEN_BOOK, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  signals[UNWRITTEN] = g_signal_new ("unwritten", FM_TYPE_KITCHEN_BOOK, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
fm_kitchen_book_init (FmKitchenBook *self)
{
  self->events = fm_kitchen_events_new ();
}

FmKitchenBook *
fm_kitchen_book_new (FmExperimentDocument *document)
{
  FmKitchenBook *self = g_object_new (FM_TYPE_KITCHEN_BOOK, NULL);

  self->document = g_object_ref (document);
  work_out_state (self);
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_experiment_document_get_notebook (document),
      .run = run_read,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .data = job_new (self, NULL),
      .free_data = job_free,
      .done = read_cb,
  });
  return self;
}

gboolean
fm_kitchen_book_is_read (FmKitchenBook *self)
{
  return self->is_read;
}

const GPtrArray *
fm_kitchen_book_get_events (FmKitchenBook *self)
{
  return self->events;
}

const FmKitchenState *
fm_kitchen_book_get_state (FmKitchenBook *self)
{
  return self->state;
}

void
fm_kitchen_book_add (
    FmKitchenBook *self, FmKitchenKind kind, int portion, double value, const char *words)
{
  FmKitchenMoment now;

  g_return_if_fail (FM_IS_KITCHEN_BOOK (self));
  if (!self->is_read)
    return;
  fm_kitchen_clock_now (&now);
  g_ptr_array_add (self->events,
                   fm_kitchen_event_new (self->events->len, &now, kind, portion, value, words));
  write_next (self);
  work_out_state (self);
  land (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* It bends nothing: timers go by the events. */
void
fm_kitchen_book_note_gap (FmKitchenBook *self, const FmKitchenMoment *now)
{
  FmKitchenKind kind;
  double value;

  g_return_if_fail (FM_IS_KITCHEN_BOOK (self));
  if (self->seen.wall_us != 0 && fm_kitchen_gap (&self->seen, now, &kind, &value))
    fm_kitchen_book_add (self, kind, -1, value, NULL);
  self->seen = *now;
}

gboolean
fm_kitchen_book_take_back (FmKitchenBook *self)
{
  const FmKitchenEvent *last = fm_kitchen_last_act (self->events);

  if (last == NULL)
    return FALSE;
  fm_kitchen_book_add (self, FM_KITCHEN_TAKEN_BACK, last->portion, last->number, NULL);
  return TRUE;
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting.c - the tasting as a value: making, copying, comparing, opening */
#include "core/tasting/fm-tasting.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-error.h"
#include "core/tasting/fm-tasting-private.h"

/* Palates tire: common practice, no source. */
#define DEFAULT_MAX_PER_TASTER 6
#define SEED_BITS 53

static void
sample_free (gpointer data)
{
  FmTastingSample *sample = data;
  g_free (sample->name);
  g_free (sample);
}

static void
taster_free (gpointer data)
{
  FmTaster *taster = data;
  g_free (taster->name);
  g_free (taster);
}

static void
remark_free (gpointer data)
{
  FmTastingRemark *remark = data;
  g_free (remark->text);
  g_free (remark);
}

static void
event_free (gpointer data)
{
  FmTastingEvent *event = data;
  g_free (event->text);
  g_free (event);
}

static gpointer
sample_copy (gconstpointer data, gpointer unused)
{
  FmTastingSample *copy = g_memdup2 (data, sizeof *copy);
  copy->name = g_strdup (copy->name);
  return copy;
}

static gpointer
taster_copy (gconstpointer data, gpointer unused)
{
  FmTaster *copy = g_memdup2 (data, sizeof *copy);
  copy->name = g_strdup (copy->name);
  return copy;
}

static gpointer
remark_copy (gconstpointer data, gpointer unused)
{
  FmTastingRemark *copy = g_memdup2 (data, sizeof *copy);
  copy->text = g_strdup (copy->text);
  return copy;
}

static gpointer
event_copy (gconstpointer data, gpointer unused)
{
  FmTastingEvent *copy = g_memdup2 (data, sizeof *copy);
  copy->text = g_strdup (copy->text);
  return copy;
}

static gpointer
text_copy (gconstpointer data, gpointer unused)
{
  return g_strdup (data);
}

static GPtrArray *
list_copy (GPtrArray *list, GCopyFunc copy_item, GDestroyNotify free_item)
{
  GPtrArray *copy = g_ptr_array_copy (list, copy_item, NULL);
  g_ptr_array_set_free_func (copy, free_item);
  return copy;
}

static guint64
random_seed (void)
{
  const guint64 bits = ((guint64)g_random_int () << 32) | g_random_int ();
  return bits >> (64 - SEED_BITS);
}

guint64
fm_tasting_hidden_part (void)
{
  return MAX (random_seed (), 1);
}

FmTasting *
fm_tasting_new (void)
{
  FmTasting *self = g_new0 (FmTasting, 1);

  self->tasks = FM_TASTING_RANK | FM_TASTING_REMARKS;
  self->seed = random_seed ();
  self->max_per_taster = DEFAULT_MAX_PER_TASTER;
  self->samples = g_ptr_array_new_with_free_func (sample_free);
  self->tasters = g_ptr_array_new_with_free_func (taster_free);
  self->attributes = g_ptr_array_new_with_free_func (g_free);
  self->pair[0] = self->pair[1] = -1;
  self->triangle[0] = self->triangle[1] = -1;
  self->cups = g_array_new (FALSE, TRUE, sizeof (FmTastingCup));
  self->marks = g_array_new (FALSE, TRUE, sizeof (FmTastingMark));
  self->remarks = g_ptr_array_new_with_free_func (remark_free);
  self->events = g_ptr_array_new_with_free_func (event_free);
  return self;
}

FmTasting *
fm_tasting_copy (const FmTasting *self)
{
  FmTasting *copy = g_memdup2 (self, sizeof *self);

  copy->title = g_strdup (self->title);
  copy->notes = g_strdup (self->notes);
  copy->samples = list_copy (self->samples, (GCopyFunc)sample_copy, sample_free);
  copy->tasters = list_copy (self->tasters, (GCopyFunc)taster_copy, taster_free);
  copy->attributes = list_copy (self->attributes, (GCopyFunc)text_copy, g_free);
  copy->remarks = list_copy (self->remarks, (GCopyFunc)remark_copy, remark_free);
  copy->events = list_copy (self->events, (GCopyFunc)event_copy, event_free);
  copy->cups = g_array_copy (self->cups);
  copy->marks = g_array_copy (self->marks);
  if (self->expected_place != NULL)
    copy->expected_place = g_array_copy (self->expected_place);
  return copy;
}

void
fm_tasting_free (FmTasting *self)
{
  if (self == NULL)
    return;
  g_free (self->title);
  g_free (self->notes);
  g_ptr_array_unref (self->samples);
  g_ptr_array_unref (self->tasters);
  g_ptr_array_unref (self->attributes);
  g_ptr_array_unref (self->remarks);
  g_ptr_array_unref (self->events);
  g_array_unref (self->cups);
  g_array_unref (self->marks);
  g_clear_pointer (&self->expected_place, g_array_unref);
  g_free (self);
}

void
fm_tasting_add_sample (FmTasting *self, gint64 experiment_id, gint64 version_id, const char *name)
{
  g_return_if_fail (self->state == FM_TASTING_PLANNED);
  FmTastingSample *sample = g_new0 (FmTastingSample, 1);
  sample->experiment_id = experiment_id;
  sample->version_id = version_id;
  sample->name = g_strdup (name);
  g_ptr_array_add (self->samples, sample);
  /* an order written down for fewer samples says nothing about this one */
  g_clear_pointer (&self->expected_place, g_array_unref);
}

static void
forget_sample (int chosen[2], guint index)
{
  for (guint i = 0; i < 2; i++)
    if (chosen[i] == (int)index)
      chosen[i] = -1;
    else if (chosen[i] > (int)index)
      chosen[i]--;
}

void
fm_tasting_remove_sample (FmTasting *self, guint index)
{
  g_return_if_fail (self->state == FM_TASTING_PLANNED && index < self->samples->len);
  g_ptr_array_remove_index (self->samples, index);
  forget_sample (self->pair, index);
  forget_sample (self->triangle, index);
  g_clear_pointer (&self->expected_place, g_array_unref);
}

void
fm_tasting_add_taster (FmTasting *self, const char *name)
{
  g_return_if_fail (self->state == FM_TASTING_PLANNED);
  FmTaster *taster = g_new0 (FmTaster, 1);
  taster->name = g_strdup (name);
  g_ptr_array_add (self->tasters, taster);
}

void
fm_tasting_remove_taster (FmTasting *self, guint index)
{
  g_return_if_fail (self->state == FM_TASTING_PLANNED && index < self->tasters->len);
  g_ptr_array_remove_index (self->tasters, index);
}

int
fm_tasting_find_taster (const FmTasting *self, const char *name)
{
  g_autofree char *wanted = g_utf8_casefold (name, -1);
  for (guint t = 0; t < self->tasters->len; t++) {
    g_autofree char *folded = g_utf8_casefold (((FmTaster *)self->tasters->pdata[t])->name, -1);
    if (g_str_equal (folded, wanted))
      return (int)t;
  }
  return -1;
}

gboolean
fm_tasting_is_sealed (const FmTasting *self)
{
  return self->state == FM_TASTING_SEALED;
}

const FmTaster *
fm_tasting_taster (const FmTasting *self, guint taster)
{
  g_return_val_if_fail (taster < self->tasters->len, NULL);
  return self->tasters->pdata[taster];
}

guint
fm_tasting_n_sheets (const FmTasting *self, FmSheetState state)
{
  guint n = 0;
  for (guint t = 0; t < self->tasters->len; t++)
    n += fm_tasting_taster (self, t)->sheet == state;
  return n;
}

guint
fm_tasting_n_in (const FmTasting *self)
{
  return fm_tasting_n_sheets (self, FM_SHEET_IN);
}

gboolean
fm_tasting_all_in (const FmTasting *self)
{
  return fm_tasting_n_in (self) == self->tasters->len;
}

void
fm_tasting_record (FmTasting *self, gint64 now, FmTastingEventKind kind, const char *text)
{
  FmTastingEvent *event = g_new0 (FmTastingEvent, 1);
  event->at = now;
  event->kind = kind;
  event->text = g_strdup (text);
  g_ptr_array_add (self->events, event);
}

void
fm_tasting_record_change (FmTasting *self, gint64 now, const char *text)
{
  if (self->state == FM_TASTING_OPENED)
    fm_tasting_record (self, now, FM_TASTING_EVENT_SHEET_CHANGED, text);
}

gboolean
fm_tasting_open (FmTasting *self, gint64 now, const char *reason, GError **error)
{
  if (self->state != FM_TASTING_SEALED) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         self->state == FM_TASTING_PLANNED
                             ? _ ("This tasting is not sealed yet. Give out the codes first.")
                             : _ ("This tasting is open already."));
    return FALSE;
  }
  const gboolean all_in = fm_tasting_all_in (self);
  g_autofree char *why = g_strstrip (g_strdup (reason != NULL ? reason : ""));
  if (!all_in && *why == '\0') {
    const guint n = self->tasters->len - fm_tasting_n_in (self);
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 ngettext ("%u sheet is not in. Write down why the tasting is opened without it, "
                           "or enter the sheet first.",
                           "%u sheets are not in. Write down why the tasting is opened without "
                           "them, or enter the sheets first.",
                           n),
                 n);
    return FALSE;
  }
  self->state = FM_TASTING_OPENED;
  fm_tasting_record (self, now, all_in ? FM_TASTING_EVENT_OPENED : FM_TASTING_EVENT_OPENED_EARLY,
                     all_in ? NULL : why);
  return TRUE;
}

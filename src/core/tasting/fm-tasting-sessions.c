/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sessions.c - more samples than one session takes, over several of them */
#include "core/tasting/fm-tasting-sessions.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-stat.h"

/* Number of sessions; 0 with @error. */
static guint
count_sessions (guint n_common, guint n_others, guint per_session, GError **error)
{
  if (n_common == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("Choose at least one sample that stands in every session: without one "
                            "the sessions cannot be compared."));
    return 0;
  }
  if (n_common >= per_session) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The samples of every session leave no room for another. Choose fewer "
                            "of them, or more samples in a session."));
    return 0;
  }
  if (n_common + n_others <= per_session) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("All samples fit into one session."));
    return 0;
  }
  return (n_others + per_session - n_common - 1) / (per_session - n_common);
}

/* By sample, the session it stands in. */
static guint *
deal (const FmTasting *self, const gboolean *is_common, guint n_sessions)
{
  const guint n = self->samples->len;
  guint *session = g_new0 (guint, n);
  g_autofree guint *order = g_new0 (guint, n);
  guint turn = 0;
  FmRandom random;

  for (guint i = 0; i < n; i++)
    order[i] = i;
  fm_random_init (&random, self->seed);
  fm_random_shuffle (&random, order, n);
  for (guint i = 0; i < n; i++)
    if (!is_common[order[i]])
      session[order[i]] = turn++ % n_sessions;
  return session;
}

static void
forget_what_is_not_whole (FmTasting *session)
{
  if (session->pair[0] < 0 || session->pair[1] < 0)
    session->tasks &= ~(guint)FM_TASTING_PREFERENCE;
  if (session->triangle[0] < 0 || session->triangle[1] < 0)
    session->tasks &= ~(guint)FM_TASTING_TRIANGLE;
}

static FmTasting *
session_new (const FmTasting *self,
             const gboolean *is_common,
             const guint *session,
             guint which,
             guint n_sessions,
             gint64 held_at)
{
  FmTasting *plan = fm_tasting_again (self, held_at);

  g_free (plan->title);
  /* TRANSLATORS: title of a tasting, number of the session, how many there are */
  plan->title =
      g_strdup_printf (_ ("%s, session %u of %u"),
                       self->title != NULL ? self->title : _ ("Tasting"), which + 1, n_sessions);
  for (guint i = self->samples->len; i > 0; i--)
    if (!is_common[i - 1] && session[i - 1] != which)
      fm_tasting_remove_sample (plan, i - 1);
  forget_what_is_not_whole (plan);
  return plan;
}

GPtrArray *
fm_tasting_sessions (const FmTasting *self,
                     const gboolean *is_common,
                     guint per_session,
                     gint64 held_at,
                     GError **error)
{
  g_autofree guint *session = NULL;
  GPtrArray *plans;
  guint n_common = 0;
  guint n_sessions;

  for (guint i = 0; i < self->samples->len; i++)
    n_common += is_common[i] != FALSE;
  n_sessions = count_sessions (n_common, self->samples->len - n_common, per_session, error);
  if (n_sessions == 0)
    return NULL;
  session = deal (self, is_common, n_sessions);
  plans = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_free);
  for (guint which = 0; which < n_sessions; which++)
    g_ptr_array_add (plans, session_new (self, is_common, session, which, n_sessions, held_at));
  return plans;
}

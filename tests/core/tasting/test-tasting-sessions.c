/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting-sessions.c - samples over several sessions that can be read together */
#include "core/tasting/fm-tasting-sessions.h"

#include "core/base/fm-error.h"
#include "core/tasting/fm-tasting-pool.h"
#include "tasting.h"

#define ASKED (FM_TASTING_RANK | FM_TASTING_PREFERENCE)

static gboolean
holds (const FmTasting *plan, gint64 version_id)
{
  for (guint i = 0; i < plan->samples->len; i++)
    if (((const FmTastingSample *)plan->samples->pdata[i])->version_id == version_id)
      return TRUE;
  return FALSE;
}

static guint
count_held (const GPtrArray *plans, gint64 version_id)
{
  guint n = 0;

  for (guint i = 0; i < plans->len; i++)
    n += holds (plans->pdata[i], version_id);
  return n;
}

/* Nine samples, five a session, two of them in each: three sessions of 5, 4 and 4. */
static void
test_dealt_out (void)
{
  const gboolean is_common[9] = { TRUE, TRUE };
  g_autoptr (FmTasting) self = tasting_planned (9, 3, ASKED, 4);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) plans = fm_tasting_sessions (self, is_common, 5, 99, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (plans->len, ==, 3);
  for (guint s = 0; s < 9; s++)
    g_assert_cmpuint (count_held (plans, 101 + s), ==, is_common[s] ? 3 : 1);
  for (guint i = 0; i < 3; i++) {
    const FmTasting *plan = plans->pdata[i];

    g_assert_cmpuint (plan->samples->len, <=, 5);
    g_assert_cmpuint (plan->samples->len, >=, 4);
    g_assert_cmpint (plan->held_at, ==, 99);
    g_assert_cmpuint (plan->tasters->len, ==, 3);
    g_assert_cmpuint (plan->tasks, ==, ASKED); /* the pair is the two common ones */
    g_assert_true (fm_tasting_check (plan, &error));
    g_assert_no_error (error);
  }
  g_assert_cmpuint (self->samples->len, ==, 9);
}

/* A pair that no session holds whole is not asked. */
static void
test_broken_pair (void)
{
  const gboolean is_common[5] = { FALSE, FALSE, TRUE };
  g_autoptr (FmTasting) self = tasting_planned (5, 2, ASKED, 4);
  g_autoptr (GPtrArray) plans = fm_tasting_sessions (self, is_common, 2, 99, NULL);

  g_assert_cmpuint (plans->len, ==, 4);
  for (guint i = 0; i < plans->len; i++) {
    const FmTasting *plan = plans->pdata[i];

    g_assert_cmpuint (plan->tasks, ==, FM_TASTING_RANK);
    g_assert_true (fm_tasting_check (plan, NULL));
  }
}

/* Through the common sample all are compared; that is what it is for. */
static void
test_read_together (void)
{
  const gboolean is_common[7] = { TRUE };
  g_autoptr (FmTasting) self = tasting_planned (7, 2, FM_TASTING_RANK, 4);
  g_autoptr (GPtrArray) plans = fm_tasting_sessions (self, is_common, 4, 99, NULL);

  for (guint i = 0; i < plans->len; i++) {
    FmTasting *plan = plans->pdata[i];

    g_assert_true (fm_tasting_arrange (plan, 9, 100, NULL));
    for (guint taster = 0; taster < 2; taster++)
      for (guint s = 0; s < plan->samples->len; s++)
        tasting_mark (plan, taster, s, FM_TASTING_RANK, 1 + (s + taster) % plan->samples->len);
    tasting_all_in (plan);
    g_assert_true (fm_tasting_open (plan, 200, NULL, NULL));
  }
  g_autoptr (FmTastingPool) pool = fm_tasting_pool_new (plans);
  g_autoptr (FmPoolFit) fit = fm_pool_fit (pool->orders, FM_POOL_PRIOR_SD, NULL);
  g_assert_cmpuint (pool->items->len, ==, 7);
  g_assert_cmpuint (fit->n_groups, ==, 1);
}

static void
assert_refused (const gboolean *is_common, guint per_session, FmCoreError code)
{
  g_autoptr (FmTasting) self = tasting_planned (4, 2, FM_TASTING_RANK, 4);
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_tasting_sessions (self, is_common, per_session, 99, &error));
  g_assert_error (error, FM_CORE_ERROR, (int)code);
}

static void
test_refused (void)
{
  const gboolean none[4] = { FALSE };
  const gboolean two[4] = { TRUE, FALSE, TRUE };

  assert_refused (none, 3, FM_CORE_ERROR_EMPTY);
  assert_refused (two, 2, FM_CORE_ERROR_OUT_OF_RANGE);
  assert_refused (two, 4, FM_CORE_ERROR_OUT_OF_RANGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tasting-sessions/dealt-out", test_dealt_out);
  g_test_add_func ("/tasting-sessions/broken-pair", test_broken_pair);
  g_test_add_func ("/tasting-sessions/read-together", test_read_together);
  g_test_add_func ("/tasting-sessions/refused", test_refused);
  return g_test_run ();
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-lattice.c - designs on the whole simplex */
#include "core/mixture/fm-mix.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"

guint64
fm_mix_lattice_count (guint q, guint m)
{
  guint64 count = 1;
  /* (q + m - 1)! / (m! (q - 1)!), one factor at a time: each step is a whole number */
  for (guint i = 1; i < q; i++) {
    guint64 product;
    if (!g_uint64_checked_mul (&product, count, (guint64)m + i))
      return 0;
    count = product / i;
  }
  return count;
}

guint64
fm_mix_simplex_centroid_count (guint q)
{
  return q < 64 ? (G_GUINT64_CONSTANT (1) << q) - 1 : 0;
}

static gboolean
check_size (guint q, guint64 count, GError **error)
{
  if (q < 2 || q > FM_MIX_MAX_COMPONENTS)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A mixture has 2 to %d components."), FM_MIX_MAX_COMPONENTS);
  else if (count == 0 || count > FM_MIX_MAX_POINTS)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("This design would have more than %d blends. Choose fewer steps or "
                    "components."),
                 FM_MIX_MAX_POINTS);
  else
    return TRUE;
  return FALSE;
}

/* The next way to deal m steps to q components, the first component giving away last; FALSE after
 * the one that gives all to the last. */
static gboolean
next_deal (guint *step, guint q)
{
  guint i = q - 1;
  while (i > 0 && step[i - 1] == 0)
    i--;
  if (i == 0)
    return FALSE;
  const guint rest = step[q - 1];
  step[q - 1] = 0;
  step[i - 1]--;
  step[i] = rest + 1;
  return TRUE;
}

FmMixPoints *
fm_mix_lattice (guint q, guint m, GError **error)
{
  if (m == 0) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A lattice needs at least one step from none to all."));
    return NULL;
  }
  if (!check_size (q, fm_mix_lattice_count (q, m), error))
    return NULL;

  FmMixPoints *points = fm_mix_points_new (q);
  guint step[FM_MIX_MAX_COMPONENTS] = { m };
  do {
    double x[FM_MIX_MAX_COMPONENTS];
    for (guint i = 0; i < q; i++)
      x[i] = (double)step[i] / m;
    fm_mix_points_add (points, x);
  } while (next_deal (step, q));
  return points;
}

/* Equal parts of each choice of @size components, the first choices first. */
static void
add_equal_parts (FmMixPoints *points, guint size)
{
  guint pick[FM_MIX_MAX_COMPONENTS];
  for (guint i = 0; i < size; i++)
    pick[i] = i;
  for (;;) {
    double x[FM_MIX_MAX_COMPONENTS] = { 0.0 };
    for (guint i = 0; i < size; i++)
      x[pick[i]] = 1.0 / size;
    fm_mix_points_add (points, x);

    guint i = size;
    while (i > 0 && pick[i - 1] == points->q - size + i - 1)
      i--;
    if (i == 0)
      return;
    pick[i - 1]++;
    for (guint j = i; j < size; j++)
      pick[j] = pick[j - 1] + 1;
  }
}

FmMixPoints *
fm_mix_simplex_centroid (guint q, GError **error)
{
  if (!check_size (q, fm_mix_simplex_centroid_count (q), error))
    return NULL;

  FmMixPoints *points = fm_mix_points_new (q);
  for (guint size = 1; size <= q; size++)
    add_equal_parts (points, size);
  return points;
}

FmMixPoints *
fm_mix_from_pseudo (const FmMixPoints *z, const double *lower, GError **error)
{
  double room = 1.0;
  gboolean is_share = TRUE;

  for (guint i = 0; i < z->q; i++) {
    is_share = is_share && lower[i] >= 0.0 && lower[i] <= 1.0;
    room -= lower[i];
  }
  if (!is_share || room <= FM_MIX_EPSILON) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 is_share ? _ ("The least shares add up to 100 %% or more, which leaves nothing to "
                               "vary. Lower one of them.")
                          : _ ("The least shares must be numbers from 0 to 100 %%."));
    return NULL;
  }
  FmMixPoints *points = fm_mix_points_new (z->q);
  for (guint row = 0; row < z->n; row++) {
    double x[FM_MIX_MAX_COMPONENTS];
    for (guint i = 0; i < z->q; i++)
      x[i] = lower[i] + room * fm_mix_points_get (z, row)[i];
    fm_mix_points_add (points, x);
  }
  return points;
}

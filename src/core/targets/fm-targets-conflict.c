/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-conflict.c - which targets stand against each other, and the ways out */
#include "fm-targets-private.h"

#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Halvings of the search for the least common change: 2^-40 of what one alone would take. */
#define N_HALVINGS 40
/* Doublings while looking for a common change that helps at all. */
#define N_DOUBLINGS 20

static const FmTargetRow *
row_at (const FmTargetsModel *self, guint index)
{
  return g_ptr_array_index (self->targets->rows, index);
}

static const FmTargetLimit *
limit_at (const FmTargetsModel *self, guint index)
{
  return &g_array_index (self->limits, FmTargetLimit, index);
}

static gboolean
is_feasible (FmTargetsModel *self)
{
  return fm_solver_run (self->solver) == FM_SOLVE_OPTIMAL;
}

/* Deletion filter (Chinneck and Dravnieks, ORSA J. on Computing 3:157, 1991): what can be taken
 * away without making the rest possible has no part in the conflict. Returns indices of limits. */
static GArray *
find_conflict (FmTargetsModel *self)
{
  GArray *conflict = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint k = 0; k < self->limits->len; k++) {
    fm_targets_model_use_limit (self, k, FALSE);
    if (!is_feasible (self))
      continue;
    fm_targets_model_use_limit (self, k, TRUE);
    g_array_append_val (conflict, k);
  }
  return conflict;
}

static gboolean
possible_without_share_limits (FmTargetsModel *self)
{
  fm_targets_model_free_shares (self, TRUE);
  gboolean possible = is_feasible (self);
  fm_targets_model_free_shares (self, FALSE);
  return possible;
}

static void
use_all_limits (FmTargetsModel *self)
{
  for (guint k = 0; k < self->limits->len; k++)
    fm_targets_model_move_limit (self, k, limit_at (self, k)->limit);
}

/* How far limit @index alone must go while all others hold. */
static double
alone_limit (FmTargetsModel *self, guint index)
{
  const FmTargetLimit *limit = limit_at (self, index);
  fm_targets_model_use_limit (self, index, FALSE);
  double extreme = fm_targets_model_extreme (self, limit->row, !limit->upper);
  fm_targets_model_use_limit (self, index, TRUE);
  fm_targets_model_aim_at_nothing (self);
  return extreme;
}

/* A change of each limit that counts as 1: what it would need alone, else its own size. */
static double
unit_change (const FmRelaxation *relaxation)
{
  double alone = fabs (relaxation->alone_limit - relaxation->limit);
  if (!isnan (alone))
    return alone;
  return relaxation->limit > 0.0 ? relaxation->limit : 1.0;
}

static void
move_together (FmTargetsModel *self, GArray *indices, GArray *conflict, double by)
{
  for (guint k = 0; k < indices->len; k++) {
    FmRelaxation *relaxation = &g_array_index (conflict, FmRelaxation, k);
    double change = by * unit_change (relaxation);
    relaxation->joint_limit = relaxation->limit + (relaxation->upper ? change : -change);
    fm_targets_model_move_limit (self, g_array_index (indices, guint, k), relaxation->joint_limit);
  }
}

/* The least t by which all limits of the conflict move together, in their own units. */
static void
relax_together (FmTargetsModel *self, GArray *indices, GArray *conflict)
{
  double too_little = 0.0;
  double enough = 1.0;
  move_together (self, indices, conflict, enough);
  for (int i = 0; i < N_DOUBLINGS && !is_feasible (self); i++) {
    too_little = enough;
    enough *= 2.0;
    move_together (self, indices, conflict, enough);
  }
  if (!is_feasible (self)) {
    for (guint k = 0; k < conflict->len; k++)
      g_array_index (conflict, FmRelaxation, k).joint_limit = NAN;
    return;
  }
  for (int i = 0; i < N_HALVINGS; i++) {
    double middle = 0.5 * (too_little + enough);
    move_together (self, indices, conflict, middle);
    if (is_feasible (self))
      enough = middle;
    else
      too_little = middle;
  }
  move_together (self, indices, conflict, enough);
}

/* Advice must work as it is read, so it is rounded outward. */
static double
round_outward (double limit, gboolean upper, int decimals)
{
  double scale = pow (10.0, decimals);
  double scaled = limit * scale;
  double nearest = round (scaled);
  if (fabs (scaled - nearest) < 1e-6)
    return nearest / scale;
  return (upper ? ceil (scaled) : floor (scaled)) / scale;
}

char *
fm_targets_limit_text (const FmTargetRow *row, gboolean upper, double limit)
{
  g_autofree char *value = row->unit[0] ? fm_number_format_unit (limit, row->decimals, row->unit)
                                        : fm_number_format (limit, row->decimals);
  /* Translators: name of a target and its limit, as in "Fat at most 20.0 %" */
  return upper ? g_strdup_printf (_ ("%s at most %s"), row->name, value)
               : g_strdup_printf (_ ("%s at least %s"), row->name, value);
}

typedef enum {
  TEXT_NOW,
  TEXT_ALONE,
  TEXT_JOINT,
} TextOf;

/* "a", "a or b", with @joiner between; NULL when none has such a limit. */
static char *
join_limits (const FmTargetsModel *self, GArray *conflict, TextOf which, const char *joiner)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (guint k = 0; k < conflict->len; k++) {
    const FmRelaxation *relaxation = &g_array_index (conflict, FmRelaxation, k);
    const FmTargetRow *row = row_at (self, relaxation->row);
    double limit = relaxation->limit;
    if (which != TEXT_NOW) {
      limit = which == TEXT_ALONE ? relaxation->alone_limit : relaxation->joint_limit;
      limit = round_outward (limit, relaxation->upper, row->decimals);
    }
    if (isnan (limit))
      continue;
    g_autofree char *part = fm_targets_limit_text (row, relaxation->upper, limit);
    g_string_append_printf (text, "%s%s", text->len > 0 ? joiner : "", part);
  }
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

static char *
explain_no_way_out (const FmTargetsModel *self, GArray *conflict, const char *now)
{
  if (conflict->len == 1)
    return g_strdup_printf (_ ("%s is out of reach with these ingredients, and other targets stand "
                               "in the way as well."),
                            now);
  return g_strdup_printf (_ ("These stand against each other: %s. Changing one of them does not "
                             "help, as other targets stand in the way as well."),
                          now);
}

static char *
explain (const FmTargetsModel *self, GArray *conflict)
{
  g_autofree char *now = join_limits (self, conflict, TEXT_NOW, _ (" and "));
  g_autofree char *alone = join_limits (self, conflict, TEXT_ALONE, _ ("; or "));
  g_autofree char *joint = join_limits (self, conflict, TEXT_JOINT, _ (" with "));
  if (!alone)
    return explain_no_way_out (self, conflict, now);
  if (conflict->len == 1)
    /* Translators: as in "Fat at most 8 % is out of reach ...: it would work with Fat at most 9 %"
     */
    return g_strdup_printf (_ ("%s is out of reach with these ingredients: it would work with %s."),
                            now, alone);
  if (!joint)
    return g_strdup_printf (_ ("These stand against each other: %s. It would work with %s."), now,
                            alone);
  return g_strdup_printf (
      _ ("These stand against each other: %s. It would work with %s; or all changed a little: %s."),
      now, alone, joint);
}

void
fm_targets_explain_conflict (FmTargetsModel *self, FmTargetsResult *result)
{
  fm_targets_model_aim_at_nothing (self);
  g_autoptr (GArray) indices = find_conflict (self);
  use_all_limits (self);
  result->limits_matter = possible_without_share_limits (self);
  for (guint k = 0; k < indices->len; k++) {
    guint index = g_array_index (indices, guint, k);
    const FmTargetLimit *limit = limit_at (self, index);
    FmRelaxation relaxation = { limit->row, limit->upper, limit->limit, alone_limit (self, index),
                                NAN };
    g_array_append_val (result->conflict, relaxation);
  }
  relax_together (self, indices, result->conflict);
  g_autofree char *sentence = explain (self, result->conflict);
  result->sentence =
      result->limits_matter
          ? g_strconcat (sentence, " ", _ ("Without the locks and share limits it could be met."),
                         NULL)
          : g_steal_pointer (&sentence);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-together-text.c - what a reading of several tastings says in words */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/tasting/fm-tasting-together.h"

/* What chance does more rarely than this is not put down to it. */
#define ALPHA 0.05
/* Of pairs that are put the same way round: fewer than half of them is the other way. */
#define HALF 0.5

static const char *
item_name (const FmTastingTogether *self, guint item)
{
  return self->pool->items->pdata[item];
}

static guint
group_of (const FmTastingTogether *self, guint item)
{
  return self->orders != NULL ? self->orders->group[item] : self->liking->group[item];
}

static guint
n_groups (const FmTastingTogether *self)
{
  guint n = 0;

  for (guint a = 0; a < self->pool->items->len; a++)
    n = group_of (self, a) == FM_POOL_NO_GROUP ? n : MAX (n, group_of (self, a) + 1);
  return n;
}

static gboolean
is_apart (const FmTastingTogether *self, guint a, guint b)
{
  return self->orders != NULL ? fm_pool_fit_is_apart (self->orders, a, b)
                              : fm_pool_liking_is_apart (self->liking, a, b);
}

static gboolean
is_compared (const FmTastingTogether *self, guint a, guint b)
{
  return group_of (self, a) == group_of (self, b) && group_of (self, a) != FM_POOL_NO_GROUP;
}

/* Nothing is certain: never 0 and never 100. */
static guint
in_100 (double part)
{
  return (guint)CLAMP (lround (100.0 * part), 1, 99);
}

static guint
count_sessions (const FmTastingTogether *self)
{
  return self->pool->tastings->len - self->pool->n_without_order;
}

/* "version 4 and version 6, version 6 and version 2": neighbours that are not told apart. */
static char *
close_pairs (const FmTastingTogether *self, const guint *order)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i + 1 < self->pool->items->len; i++) {
    const guint a = order[i], b = order[i + 1];

    if (!is_compared (self, a, b) || is_apart (self, a, b))
      continue;
    if (text->len > 0)
      g_string_append (text, ", ");
    /* Translators: two samples */
    g_string_append_printf (text, _ ("%s and %s"), item_name (self, a), item_name (self, b));
  }
  return g_string_free (text, FALSE);
}

static gboolean
any_is_apart (const FmTastingTogether *self)
{
  for (guint a = 0; a < self->pool->items->len; a++)
    for (guint b = 0; b < a; b++)
      if (is_apart (self, a, b))
        return TRUE;
  return FALSE;
}

/* Ahead of every one that it was compared with. */
static gboolean
leads (const FmTastingTogether *self, guint best)
{
  for (guint a = 0; a < self->pool->items->len; a++)
    if (a != best && is_compared (self, a, best) && !is_apart (self, a, best))
      return FALSE;
  return TRUE;
}

/* "Over 5 tastings and 9 tasters" */
static char *
extent_text (const FmTastingTogether *self)
{
  const guint n_tastings = count_sessions (self), n_tasters = self->pool->tasters->len;
  g_autofree char *tastings =
      g_strdup_printf (ngettext ("%u tasting", "%u tastings", n_tastings), n_tastings);
  g_autofree char *tasters =
      g_strdup_printf (ngettext ("%u taster", "%u tasters", n_tasters), n_tasters);

  /* Translators: "Over 5 tastings and 9 tasters" */
  return g_strdup_printf (_ ("Over %s and %s"), tastings, tasters);
}

char *
fm_tasting_together_headline (const FmTastingTogether *self)
{
  g_autofree guint *order = fm_tasting_together_order (self);
  g_autofree char *extent = extent_text (self);
  g_autofree char *close = close_pairs (self, order);
  const guint best = order[0], next = order[1];
  GString *text = g_string_new (NULL);

  g_string_append_printf (text,
                          leads (self, best)
                              /* Translators: "Over 5 tastings and 9 tasters", a sample */
                              ? _ ("%s %s is the most liked")
                              : _ ("%s %s comes first, which may still be chance"),
                          extent, item_name (self, best));
  /* Translators: after "Over 5 tastings and 9 tasters version 7 is the most liked" */
  g_string_append_printf (text, _ ("; %u in 100 that it beats %s"),
                          in_100 (fm_tasting_together_better (self, best, next)),
                          item_name (self, next));
  if (n_groups (self) > 1)
    g_string_append (text, _ (", among those that it was compared with"));
  if (!any_is_apart (self))
    g_string_append (text, _ ("; no two of them can be told apart yet."));
  else if (*close != '\0')
    /* Translators: pairs of samples, "version 4 and version 6" */
    g_string_append_printf (text, _ ("; not told apart: %s."), close);
  else
    g_string_append (text, ".");
  return g_string_free (text, FALSE);
}

char *
fm_tasting_together_liking_text (const FmTastingTogether *self)
{
  guint best = 0;
  g_autofree char *mean = NULL;
  g_autofree guint *order = NULL;

  if (self->liking == NULL || self->orders == NULL)
    return NULL;
  order = fm_tasting_together_order (self);
  for (guint a = 1; a < self->pool->items->len; a++)
    if (!(self->liking->mean[a] <= self->liking->mean[best]))
      best = isnan (self->liking->mean[a]) ? best : a;
  mean = fm_number_format (self->liking->mean[best], 1);
  if (best == order[0])
    return g_strdup_printf (_ ("The scores agree: %s is liked best there as well, %s of 9."),
                            item_name (self, best), mean);
  return g_strdup_printf (_ ("The scores do not quite agree: there %s is liked best, %s of 9. "
                             "Orders and scores are two questions, and these sheets leave both "
                             "answers open."),
                          item_name (self, best), mean);
}

char *
fm_tasting_together_apart_text (const FmTastingTogether *self)
{
  g_autofree guint *order = fm_tasting_together_order (self);
  g_autoptr (GString) groups = g_string_new (NULL);
  gboolean is_parted = FALSE;

  for (guint i = 0; i < self->pool->items->len; i++) {
    const gboolean together = i > 0 && is_compared (self, order[i - 1], order[i]);

    is_parted = is_parted || (i > 0 && !together);
    g_string_append_printf (groups, "%s%s",
                            i == 0     ? ""
                            : together ? ", "
                                       : "; ",
                            item_name (self, order[i]));
  }
  if (!is_parted)
    return NULL;
  /* Translators: groups of samples, "version 7, version 4; version 2, version 1" */
  return g_strdup_printf (_ ("Never compared with each other, not even through a third sample: %s. "
                             "Nothing is said between these groups. A tasting with one sample of "
                             "each joins them."),
                          groups->str);
}

/* "Ana put 14 of 18 pairs as the others do." */
static void
add_rest_line (GString *text, const FmTastingTogether *self, guint taster)
{
  const FmPoolAgreement *rest = &self->rest[taster];

  if (rest->n_pairs == 0)
    return;
  /* Translators: taster, counts of pairs of samples */
  g_string_append_printf (
      text,
      ngettext ("%s put %u of %u pair the way round that the others give",
                "%s put %u of %u pairs the way round that the others give", rest->n_pairs),
      (const char *)self->pool->tasters->pdata[taster], rest->n_same, rest->n_pairs);
  g_string_append (text,
                   rest->n_same < HALF * rest->n_pairs ? _ (": rather the other way.\n") : ".\n");
}

char *
fm_tasting_together_tasters_text (const FmTastingTogether *self)
{
  GString *text = g_string_new (NULL);

  if (!isnan (self->tasters_p))
    g_string_append_printf (text,
                            self->tasters_p <= ALPHA
                                ? _ ("The tasters do not want the same: chance makes them differ "
                                     "by as much in about %u of 100 such readings.\n")
                                : _ ("That the tasters want different things is not shown: chance "
                                     "makes them differ by as much in about %u of 100 such "
                                     "readings.\n"),
                            in_100 (self->tasters_p));
  for (guint t = 0; t < self->pool->tasters->len; t++)
    add_rest_line (text, self, t);
  if (self->opposition.n_pairs > 0 && self->opposition.n_same < HALF * self->opposition.n_pairs)
    /* Translators: two tasters, counts of pairs of samples */
    g_string_append_printf (text,
                            ngettext ("Furthest apart are %s and %s: %u of %u pair the same way.",
                                      "Furthest apart are %s and %s: %u of %u pairs the same way.",
                                      self->opposition.n_pairs),
                            (const char *)self->pool->tasters->pdata[self->opposed[0]],
                            (const char *)self->pool->tasters->pdata[self->opposed[1]],
                            self->opposition.n_same, self->opposition.n_pairs);
  return g_strchomp (g_string_free (text, FALSE));
}

char *
fm_tasting_together_drift_text (const FmTastingTogether *self)
{
  if (isnan (self->drift_p))
    return g_strdup (_ ("With orders of one tasting only there is nothing to say of drift."));
  return g_strdup_printf (
      self->drift_p <= ALPHA
          ? _ ("The tastings do not say the same: chance makes them differ by as much in about %u "
               "of "
               "100 such readings. Making, cooking or taste changed between them; read them one "
               "by one as well.")
          : _ ("That taste drifts between the tastings is not shown: chance makes them differ by "
               "as "
               "much in about %u of 100 such readings."),
      in_100 (self->drift_p));
}

char *
fm_tasting_together_repeat_text (const FmTastingTogether *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint t = 0; t < self->pool->tasters->len; t++)
    if (self->self[t].n_pairs > 0)
      /* Translators: taster, counts of pairs of samples */
      g_string_append_printf (text,
                              ngettext ("%s%s met %u pair again and put %u the same way round.",
                                        "%s%s met %u pairs again and put %u the same way round.",
                                        self->self[t].n_pairs),
                              text->len > 0 ? "\n" : "",
                              (const char *)self->pool->tasters->pdata[t], self->self[t].n_pairs,
                              self->self[t].n_same);
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

char *
fm_tasting_together_method_text (const FmTastingTogether *self)
{
  const char *orders = _ (
      "Orders and pairs: worths after Plackett and Luce, ties after Davidson; two on a sheet are "
      "a comparison after Bradley and Terry. Errors from the information matrix; pairs are told "
      "apart at 5 % over all pairs together (studentized range). Places are not averaged over "
      "tastings.");
  const char *liking =
      _ ("Scores: sample, taster and tasting as fixed effects, least squares; pairs "
         "after Tukey and Kramer, 5 %.");
  const char *prior =
      self->has_prior
          ? _ ("Weak assumption: before any sheet one sample in six beats an average one by more "
               "than 7 : 1 (normal, standard deviation 2 of the log worth). It keeps two tasters "
               "who "
               "agree from giving certainty. Common practice, no source.")
          : _ ("No assumption is made before the sheets: a few who agree can look certain.");
  const char *chance = _ ("How often chance does as much: 199 sets of sheets drawn from this one "
                          "reading.");

  return g_strjoin ("\n", orders, liking, prior, chance, NULL);
}

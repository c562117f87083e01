/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-reading-text.c - the reading as sentences, most telling first */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/statistics/fm-panel-text-private.h"
#include "core/tasting/fm-tasting-private.h"
#include "core/tasting/fm-tasting-reading-private.h"

#define MAX_FINDINGS 5

/** A sentence and how far from chance what it tells is. */
typedef struct {
  char *text;
  double p;
} Finding;

typedef struct {
  Finding finding[MAX_FINDINGS];
  guint n;
} Findings;

static void
add_finding (Findings *self, char *text, double p)
{
  self->finding[self->n++] = (Finding){ text, isnan (p) ? 1 : p };
}

/* A stable sort: findings equally far from chance keep the order of the tasks */
static void
sort_findings (Findings *self)
{
  for (guint i = 1; i < self->n; i++) {
    const Finding moved = self->finding[i];
    guint j = i;
    for (; j > 0 && self->finding[j - 1].p > moved.p; j--)
      self->finding[j] = self->finding[j - 1];
    self->finding[j] = moved;
  }
}

static void
collect_findings (const FmTastingReading *self, Findings *findings)
{
  const char *const *labels = (const char *const *)self->labels;
  if (self->rank != NULL)
    add_finding (findings, fm_panel_rank_sentence (self->rank, labels), self->rank->p);
  if (self->anova != NULL)
    add_finding (findings, fm_panel_liking_sentence (self->anova, labels), self->anova->p_sample);
  if (self->has_preference)
    add_finding (findings,
                 fm_panel_choice_sentence (&self->preference, self->preference_names[0],
                                           self->preference_names[1]),
                 self->preference.p);
  if (self->has_triangle)
    add_finding (findings,
                 fm_panel_choice_sentence (&self->triangle, self->triangle_names[0],
                                           self->triangle_names[1]),
                 self->triangle.p);
  if (self->has_page)
    add_finding (findings, fm_panel_page_sentence (&self->page), self->page.p);
}

static char *
bare_headline (const FmTastingReading *self)
{
  g_autofree char *sheets = fm_panel_count_word_first (self->n_tasters);
  if (self->jar->len > 0)
    return g_strdup_printf (ngettext ("%s sheet counts: see what was too little or too much.",
                                      "%s sheets count: see what was too little or too much.",
                                      self->n_tasters),
                            sheets);
  return g_strdup_printf (ngettext ("%s sheet counts; there is nothing on it to be tested.",
                                    "%s sheets count; there is nothing on them to be tested.",
                                    self->n_tasters),
                          sheets);
}

static void
add_line (FmTastingReading *self, const char *text)
{
  if (text != NULL)
    g_ptr_array_add (self->lines, g_strdup (text));
}

/* TRUE when rank order and liking name different samples first */
static gboolean
have_other_leader (const FmTastingReading *self)
{
  gboolean is_shared;
  return self->rank->n_leaders > 0 &&
         fm_rank_place (self->rank, self->anova->leader, &is_shared) != 1;
}

/* Rank orders and scores of one panel that differ, in one sentence; nothing when they agree */
static char *
reconciled (const FmTastingReading *self)
{
  const gboolean by_rank = self->rank->p <= FM_PANEL_ALPHA;
  const gboolean by_liking = self->anova->p_sample <= FM_PANEL_ALPHA;
  const char *ranked = self->labels[self->rank->leader], *liked = self->labels[self->anova->leader];

  if (!have_other_leader (self)) {
    if (by_rank == by_liking)
      return NULL;
    return g_strdup_printf (
        by_rank
            ? _ ("Rank order and liking both point to %s; the orders show a difference, and the "
                 "scores do not contradict it.")
            : _ ("Rank order and liking both point to %s; the scores show a difference, and the "
                 "orders, which do not know how far apart samples are, do not contradict it."),
        liked);
  }
  if (by_rank && by_liking)
    return g_strdup_printf (_ ("Rank order puts %s first and liking %s: both show differences, "
                               "but not the same best one, so serve these two against each other."),
                            ranked, liked);
  if (by_rank || by_liking)
    return g_strdup_printf (
        by_rank ? _ ("Rank order puts %s first and liking %s: only the rank order shows a "
                     "difference, so go by it and take the other as a hint.")
                : _ ("Rank order puts %s first and liking %s: only the liking shows a difference, "
                     "so go by it and take the other as a hint."),
        ranked, liked);
  return g_strdup_printf (_ ("Rank order puts %s first and liking %s: no difference is shown by "
                             "either, so take neither as the better one."),
                          ranked, liked);
}

static void
add_reconciled (FmTastingReading *self)
{
  if (self->rank == NULL || self->anova == NULL || isnan (self->anova->p_sample))
    return;
  g_autofree char *text = reconciled (self);
  add_line (self, text);
}

static void
add_jar_lines (FmTastingReading *self)
{
  for (guint i = 0; i < self->jar->len; i++) {
    const FmTastingJar *jar = self->jar->pdata[i];
    g_ptr_array_add (self->lines,
                     /* TRANSLATORS: a sample, then "salt: 3 too little, 1 just about right ..." */
                     g_strdup_printf (_ ("%s, %s"), self->labels[jar->sample], jar->sentence));
  }
}

static void
add_sheet_lines (FmTastingReading *self, const FmTasting *tasting)
{
  const guint n_waited = fm_tasting_n_sheets (tasting, FM_SHEET_WAITED_FOR);
  const guint n_missing = fm_tasting_n_sheets (tasting, FM_SHEET_MISSING);
  const guint n_dropped = fm_tasting_n_sheets (tasting, FM_SHEET_DROPPED_OUT);
  if (n_waited > 0)
    g_ptr_array_add (self->lines,
                     g_strdup_printf (ngettext ("%u sheet is still waited for and not counted; "
                                                "stopping when the numbers please makes p too "
                                                "small.",
                                                "%u sheets are still waited for and not counted; "
                                                "stopping when the numbers please makes p too "
                                                "small.",
                                                n_waited),
                                      n_waited));
  if (n_missing > 0)
    g_ptr_array_add (self->lines, g_strdup_printf (ngettext ("%u sheet is missing.",
                                                             "%u sheets are missing.", n_missing),
                                                   n_missing));
  if (n_dropped > 0)
    g_ptr_array_add (self->lines,
                     g_strdup_printf (ngettext ("%u taster dropped out; what was marked until "
                                                "then counts.",
                                                "%u tasters dropped out; what they marked until "
                                                "then counts.",
                                                n_dropped),
                                      n_dropped));
  if (self->rank != NULL && self->rank->n_left_out > 0)
    g_ptr_array_add (self->lines,
                     g_strdup_printf (ngettext ("%u sheet ranks fewer than two samples and says "
                                                "nothing on the order.",
                                                "%u sheets rank fewer than two samples and say "
                                                "nothing on the order.",
                                                self->rank->n_left_out),
                                      self->rank->n_left_out));
}

static guint
n_events (const FmTasting *tasting, FmTastingEventKind kind)
{
  guint n = 0;
  for (guint i = 0; i < tasting->events->len; i++)
    n += ((const FmTastingEvent *)tasting->events->pdata[i])->kind == kind;
  return n;
}

/* The last of its kind; (nullable) */
static const FmTastingEvent *
find_event (const FmTasting *tasting, FmTastingEventKind kind)
{
  for (guint i = tasting->events->len; i > 0; i--) {
    const FmTastingEvent *event = tasting->events->pdata[i - 1];
    if (event->kind == kind)
      return event;
  }
  return NULL;
}

static void
add_reason (FmTastingReading *self, const FmTastingEvent *event, const char *what)
{
  if (event == NULL)
    return;
  /* TRANSLATORS: a sentence, then the reason somebody gave */
  g_ptr_array_add (self->lines, g_strdup_printf (_ ("%s The reason given: “%s”."), what,
                                                 event->text != NULL ? event->text : "–"));
}

static void
add_record_lines (FmTastingReading *self, const FmTasting *tasting)
{
  add_reason (self, find_event (tasting, FM_TASTING_EVENT_OPENED_EARLY),
              _ ("The tasting was opened before all sheets were in; sheets entered later were not "
                 "blind."));
  add_reason (self, find_event (tasting, FM_TASTING_EVENT_UNCHECKED),
              _ ("It was served although not every sample's core reading and allergens were on "
                 "record."));
  if (tasting->blinding != FM_TASTING_BLINDING_NOT_SAID)
    /* TRANSLATORS: "Somebody else relabels" */
    g_ptr_array_add (self->lines, g_strdup_printf (_ ("How the names were kept from the cook: %s."),
                                                   fm_tasting_blinding_name (tasting->blinding)));
  for (guint i = 0; i < tasting->events->len; i++) {
    const FmTastingEvent *event = tasting->events->pdata[i];
    if (event->kind == FM_TASTING_EVENT_KEY_SHEET && event->text != NULL)
      /* TRANSLATORS: name of a helper */
      g_ptr_array_add (self->lines, g_strdup_printf (_ ("%s saw the key before the codes were "
                                                        "opened, as a helper who does not taste."),
                                                     event->text));
  }
  if (find_event (tasting, FM_TASTING_EVENT_COPIED) != NULL)
    add_line (self, _ ("This is a copy of the sealed tasting: the codes may have been opened in "
                       "another copy before, without a trace in this one."));
}

/* What was typed once the codes were known comes first: the rest has to be read in its light */
static void
say_unblind (FmTastingReading *self, const FmTasting *tasting)
{
  const guint n = n_events (tasting, FM_TASTING_EVENT_SHEET_CHANGED);
  if (n == 0)
    return;
  g_autofree char *headline = self->headline;
  g_autofree char *count = fm_panel_count_word_first (n);
  g_autofree char *warning = g_strdup_printf (
      ngettext ("%s entry on the sheets was made after the codes were opened, so it is not blind.",
                "%s entries on the sheets were made after the codes were opened, so they are not "
                "blind.",
                n),
      count);
  self->headline = g_strdup_printf ("%s %s", warning, headline);
}

void
fm_tasting_reading_tell (FmTastingReading *self, const FmTasting *tasting)
{
  Findings findings = { .n = 0 };

  self->lines = g_ptr_array_new_with_free_func (g_free);
  collect_findings (self, &findings);
  /* the first asked is the headline, whatever came out: no picking of the best-looking test */
  self->headline = findings.n > 0 ? findings.finding[0].text : bare_headline (self);
  if (findings.n > 0) {
    Findings others = { .n = 0 };
    for (guint i = 1; i < findings.n; i++)
      add_finding (&others, findings.finding[i].text, findings.finding[i].p);
    sort_findings (&others);
    for (guint i = 0; i < others.n; i++)
      g_ptr_array_add (self->lines, others.finding[i].text);
  }
  add_reconciled (self);
  if (self->rank != NULL)
    self->agreement_sentence = fm_panel_agreement_sentence (self->rank);
  add_line (self, self->agreement_sentence);
  add_line (self, self->position_sentence);
  add_jar_lines (self);
  add_line (self, self->rank_problem);
  add_line (self, self->anova_problem);
  add_line (self, self->page_problem);
  add_sheet_lines (self, tasting);
  add_record_lines (self, tasting);
  say_unblind (self, tasting);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-pool.c - worths of pooled orders and pooled liking, against published ones and R
 *
 * The tables pool_rankings.tsv, pool_nascar.tsv and pool_expected.tsv name their sources and marks.
 */
#include "core/statistics/fm-pool.h"

#include <stdlib.h>
#include <string.h>

#include "ask-r.h"
#include "core/statistics/fm-anova.h"
#include "core/statistics/fm-pool-liking.h"
#include "table.h"

/* Maximised apart from here to about this. */
#define COMPUTED 2e-6
/* The puddings were printed after seven steps of the search. */
#define SEVEN_STEPS 0.0002

typedef struct {
  FmPool *pool;
  GPtrArray *names; /* of items */
} Case;

static guint
item_index (Case *self, const char *name)
{
  guint at;

  if (g_ptr_array_find_with_equal_func (self->names, name, g_str_equal, &at))
    return at;
  g_ptr_array_add (self->names, g_strdup (name));
  return self->names->len - 1;
}

/* Items are counted before the pool is made, so sheets wait. */
static void
add_sheet (GArray *sheets, const FmPoolSheet *sheet, guint weight)
{
  for (guint i = 0; i < weight && sheet->n > 0; i++)
    g_array_append_vals (sheets, sheet, 1);
}

static void
fill_pool (Case *self, const GArray *sheets)
{
  self->pool = fm_pool_new (self->names->len);
  for (guint i = 0; i < sheets->len; i++) {
    const FmPoolSheet *sheet = &g_array_index (sheets, FmPoolSheet, i);

    fm_pool_add (self->pool, 0, i, sheet->n, sheet->item, sheet->place);
  }
}

static void
read_rankings (Case *self, const char *name, GArray *sheets)
{
  g_autoptr (GPtrArray) rows = read_table ("pool_rankings.tsv", "\t");
  FmPoolSheet sheet = { 0 };
  const char *set = "";
  guint weight = 0;

  for (guint i = 0; i < rows->len; i++) {
    if (!g_str_equal (cell (rows, i, 0), name))
      continue;
    if (!g_str_equal (cell (rows, i, 1), set)) {
      add_sheet (sheets, &sheet, weight);
      sheet.n = 0;
    }
    set = cell (rows, i, 1);
    weight = (guint)atoi (cell (rows, i, 2));
    sheet.item[sheet.n] = item_index (self, cell (rows, i, 3));
    sheet.place[sheet.n++] = g_ascii_strtod (cell (rows, i, 4), NULL);
  }
  add_sheet (sheets, &sheet, weight);
}

/* Without a prior nothing finite is known of drivers 84 to 87, who came last. */
static void
read_nascar (Case *self, GArray *sheets)
{
  g_autoptr (GPtrArray) rows = read_table ("pool_nascar.tsv", "\t");

  for (guint i = 0; i < rows->len; i++) {
    g_auto (GStrv) order = g_strsplit (cell (rows, i, 1), " ", -1);
    FmPoolSheet sheet = { 0 };

    for (guint j = 0; order[j] != NULL; j++) {
      if (atoi (order[j]) >= 84)
        continue;
      sheet.item[sheet.n] = item_index (self, order[j]);
      sheet.place[sheet.n++] = j + 1;
    }
    add_sheet (sheets, &sheet, 1);
  }
}

static void
case_init (Case *self, const char *name)
{
  g_autoptr (GArray) sheets = g_array_new (FALSE, FALSE, sizeof (FmPoolSheet));

  self->names = g_ptr_array_new_with_free_func (g_free);
  if (g_str_equal (name, "nascar2002"))
    read_nascar (self, sheets);
  else
    read_rankings (self, name, sheets);
  fill_pool (self, sheets);
}

static void
case_clear (Case *self)
{
  g_ptr_array_unref (self->names);
  fm_pool_free (self->pool);
}

static void
assert_if_known (double value, const char *text, double epsilon)
{
  if (!g_str_equal (text, "-"))
    g_assert_cmpfloat_with_epsilon (value, g_ascii_strtod (text, NULL), epsilon);
}

/* Half a unit of the last digit of a printed number. */
static double
rounding_of (const char *text)
{
  const char *point = strchr (text, '.');

  return 0.5 * pow (10, point != NULL ? -(double)strlen (point + 1) : 0);
}

/* Estimate and error of one row of the table. */
static double
found (Case *self, const FmPoolFit *fit, const char *ref, const char *item, double *se)
{
  *se = NAN;
  if (g_str_equal (item, "loglik"))
    return fit->log_likelihood;
  for (guint w = 1; w < fit->n_sizes; w++) {
    g_autofree char *name = g_strdup_printf ("log_tie%u", fit->size[w]);

    if (g_str_equal (item, name))
      return fit->tie[w];
  }
  const guint a = item_index (self, item);
  if (g_str_equal (ref, "mean")) {
    *se = fit->se[a];
    return fit->worth[a];
  }
  return fm_pool_fit_difference (fit, a, item_index (self, ref), se);
}

static void
check_case (gconstpointer data)
{
  const char *name = data;
  g_autoptr (GPtrArray) rows = read_table ("pool_expected.tsv", "\t");
  const double unsettled = g_str_equal (name, "pudding") ? SEVEN_STEPS : 1e-9;
  g_autoptr (FmPoolFit) fit = NULL;
  const char *prior = "";
  Case self;
  guint n_checked = 0;

  case_init (&self, name);
  for (guint i = 0; i < rows->len; i++) {
    double se;

    if (!g_str_equal (cell (rows, i, 0), name))
      continue;
    if (!g_str_equal (cell (rows, i, 1), prior)) {
      g_clear_pointer (&fit, fm_pool_fit_free);
      prior = cell (rows, i, 1);
      fit = fm_pool_fit (self.pool, g_ascii_strtod (prior, NULL), NULL);
    }
    const double value = found (&self, fit, cell (rows, i, 2), cell (rows, i, 3), &se);
    g_test_message ("%s, prior %s: %s to %s", name, cell (rows, i, 1), cell (rows, i, 3),
                    cell (rows, i, 2));
    assert_if_known (value, cell (rows, i, 4), COMPUTED * MAX (1, fabs (value)));
    if (!isnan (se))
      assert_if_known (se, cell (rows, i, 5), COMPUTED * 10);
    assert_if_known (value, cell (rows, i, 6), rounding_of (cell (rows, i, 6)) + unsettled);
    if (!isnan (se))
      assert_if_known (se, cell (rows, i, 7), rounding_of (cell (rows, i, 7)) + unsettled);
    n_checked++;
  }
  g_assert_cmpuint (n_checked, >, 3);
  case_clear (&self);
}

/* Two sessions without a common sample: each is told, and nothing between them. */
static void
test_disconnected (void)
{
  Case self;
  double se;

  case_init (&self, "disconnected_syn");
  g_autoptr (FmPoolFit) fit = fm_pool_fit (self.pool, 1, NULL);
  const guint a = item_index (&self, "A"), b = item_index (&self, "B"), d = item_index (&self, "D");
  g_assert_cmpuint (fit->n_groups, ==, 2);
  g_assert_cmpuint (fit->group[a], ==, fit->group[b]);
  g_assert_cmpuint (fit->group[a], !=, fit->group[d]);
  g_assert_true (isnan (fm_pool_fit_difference (fit, a, d, &se)) && isnan (se));
  g_assert_true (isnan (fm_pool_fit_better (fit, a, d)));
  g_assert_false (fm_pool_fit_is_apart (fit, a, d));
  case_clear (&self);
}

/* Orders without ties, drawn at random, against R's optim(). */
static void
test_orders_by_r (void)
{
  static const char script[] =
      "o <- matrix(%s, nrow = 12, byrow = TRUE); "
      "f <- function(b) { w <- c(0, b); s <- 0; for (r in 1:12) for (i in 1:3) "
      "s <- s - w[o[r, i]] + log(sum(exp(w[o[r, i:4]]))); s }; "
      "m <- optim(rep(0, 5), f, method = 'BFGS', hessian = TRUE, "
      "control = list(reltol = 1e-15, maxit = 1000)); "
      "cat(m$par, sqrt(diag(solve(m$hessian))))";
  g_autoptr (FmPool) pool = fm_pool_new (6);
  double order[12 * 4];
  const double place[] = { 1, 2, 3, 4 };
  FmRandom random;

  fm_random_init (&random, 20260214);
  for (guint r = 0; r < 12; r++) {
    guint item[6] = { 0, 1, 2, 3, 4, 5 };

    fm_random_shuffle (&random, item, 6);
    fm_pool_add (pool, r / 3, r % 3, 4, item, place);
    for (guint i = 0; i < 4; i++)
      order[r * 4 + i] = item[i] + 1;
  }
  g_autofree char *vector = as_r_vector (order, G_N_ELEMENTS (order));
  g_autofree char *command = g_strdup_printf (script, vector);
  g_autofree double *expected = ask_r (command, 10);
  g_autoptr (FmPoolFit) fit = fm_pool_fit (pool, INFINITY, NULL);
  for (guint a = 1; expected != NULL && a < 6; a++) {
    double se;

    /* optim() takes its slopes over steps of 0.001 */
    g_assert_cmpfloat_with_epsilon (fm_pool_fit_difference (fit, a, 0, &se), expected[a - 1], 1e-4);
    g_assert_cmpfloat_with_epsilon (se, expected[a + 4], 1e-3);
  }
}

/* One session: the same as the analysis within tasters. Box, Hunter and Hunter (1978), penicillin
 * yields, four blends as tasters and four treatments as samples; read */
static void
test_one_session_of_liking (void)
{
  static const double yield[] = { 89, 88, 97, 94, 84, 77, 92, 79, 81, 87,
                                  87, 85, 87, 92, 89, 84, 79, 81, 80, 88 };
  g_autoptr (GArray) scores = g_array_new (FALSE, FALSE, sizeof (FmPoolScore));
  g_autoptr (FmAnovaResult) anova = fm_anova_liking (5, 4, yield, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (yield); i++) {
    FmPoolScore score = { 0, i / 4, i % 4, yield[i] };
    g_array_append_val (scores, score);
  }
  g_autoptr (FmPoolLiking) liking = fm_pool_liking (scores, 4, NULL);
  g_assert_cmpuint (liking->df_error, ==, 12);
  /* residual mean square 18.83, printed by Faraway (R examples, randomized block); read */
  g_assert_cmpfloat_with_epsilon (liking->ms_error, 18.83, 0.005);
  for (guint p = 0; p < anova->n_pairs; p++) {
    const FmAnovaPair *pair = &anova->pair[p];
    double se;

    g_assert_cmpfloat_with_epsilon (fm_pool_liking_difference (liking, pair->b, pair->a, &se),
                                    pair->difference, 1e-9);
    g_assert_cmpint (fm_pool_liking_is_apart (liking, pair->a, pair->b), ==, pair->p <= 0.05);
  }
}

/* Uneven sessions, tasters who come and go, against R's lm(). */
static void
test_liking_by_r (void)
{
  static const char script[] =
      "d <- data.frame(y = %s, i = factor(%s), t = factor(%s), s = factor(%s)); "
      "m <- lm(y ~ i + t + s, d); e <- summary(m)$coefficients[2:5, 1:2]; "
      "cat(e[, 1], e[, 2], summary(m)$df[2])";
  g_autoptr (GArray) scores = g_array_new (FALSE, FALSE, sizeof (FmPoolScore));
  double column[4][64];
  FmRandom random;
  guint n = 0;

  fm_random_init (&random, 7);
  for (guint session = 0; session < 4; session++)
    for (guint taster = session % 2; taster < 4; taster++)
      for (guint i = 0; i < 3; i++, n++) {
        FmPoolScore score = { session, taster, (session + i) % 5,
                              1 + (double)fm_random_below (&random, 9) };

        g_array_append_val (scores, score);
        column[0][n] = score.score;
        column[1][n] = score.item;
        column[2][n] = score.taster;
        column[3][n] = score.session;
      }
  g_autofree char *y = as_r_vector (column[0], n);
  g_autofree char *item = as_r_vector (column[1], n);
  g_autofree char *taster = as_r_vector (column[2], n);
  g_autofree char *session = as_r_vector (column[3], n);
  g_autofree char *command = g_strdup_printf (script, y, item, taster, session);
  g_autofree double *expected = ask_r (command, 9);
  g_autoptr (FmPoolLiking) liking = fm_pool_liking (scores, 5, NULL);
  for (guint a = 1; expected != NULL && a < 5; a++) {
    double se;

    g_assert_cmpfloat_with_epsilon (fm_pool_liking_difference (liking, a, 0, &se), expected[a - 1],
                                    1e-6);
    g_assert_cmpfloat_with_epsilon (se, expected[a + 3], 1e-6);
  }
  if (expected != NULL)
    g_assert_cmpuint (liking->df_error, ==, (guint)expected[8]);
}

int
main (int argc, char **argv)
{
  static const char *const cases[] = { "pudding",      "salad",           "toy3",   "toy4",
                                       "baseball1987", "citations",       "ties7a", "tastings_syn",
                                       "nascar2002",   "disconnected_syn" };

  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *path = g_strconcat ("/reference/pool/", cases[i], NULL);

    g_test_add_data_func (path, cases[i], check_case);
  }
  g_test_add_func ("/reference/pool/disconnected", test_disconnected);
  g_test_add_func ("/reference/pool/orders-by-r", test_orders_by_r);
  g_test_add_func ("/reference/pool/penicillin-read", test_one_session_of_liking);
  g_test_add_func ("/reference/pool/liking-by-r", test_liking_by_r);
  return g_test_run ();
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix-fit.c - mixture models against published cases and R
 *
 * Marks: read = seen in the named document; memory = known, not seen; computed = with R 4.2.2
 * (shared with the data as mix_expected.json).
 */
#include <math.h>

#include "core/mixture/fm-mix-fit.h"
#include "core/statistics/fm-stat.h"
#include "ask-r.h"
#include "table.h"

static FmMixData *
read_data (const char *name)
{
  g_autoptr (GPtrArray) rows = read_table (name, ",");
  FmMixData *data = fm_mix_data_new (3, 0);

  for (guint row = 0; row < rows->len; row++) {
    const double x[] = { number (rows, row, 0), number (rows, row, 1), number (rows, row, 2) };
    fm_mix_data_add (data, x, number (rows, row, 3), NULL);
  }
  return data;
}

static FmMixFit *
fit_or_fail (const FmMixData *data, FmMixOrder order)
{
  g_autoptr (GError) error = NULL;
  FmMixFit *fit = fm_mix_fit (data, order, &error);
  g_assert_no_error (error);
  return fit;
}

static void
check_numbers (const double *got, const double *wanted, guint n, double epsilon)
{
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat_with_epsilon (got[i], wanted[i], epsilon);
}

/* NIST/SEMATECH e-Handbook 5.5.4.2, Cornell (2002): coefficients, F, R2 and root mean square as
 * printed (memory), standard errors and sums of squares computed. */
static void
test_yarn (void)
{
  const double coefficient[] = { 11.7, 9.4, 16.4, 19.0, 11.4, -9.6 };
  const double se[] = {
    0.603692342, 0.603692342, 0.603692342, 2.608249022, 2.608249022, 2.608249022
  };
  const double linear[] = { 14.994545455, 9.830909091, 15.794545455 };
  g_autoptr (FmMixData) data = read_data ("mix_yarn_data.csv");
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_QUADRATIC);
  g_autoptr (FmMixFit) first = fit_or_fail (data, FM_MIX_LINEAR);
  FmMixPrediction at_vertex;

  check_numbers (fit->coefficient, coefficient, 6, 1e-9);
  check_numbers (fit->std_error, se, 6, 1e-8);
  g_assert_cmpuint (fit->df_error, ==, 9);
  g_assert_cmpfloat_with_epsilon (fit->ss_error, 6.56, 1e-9);
  g_assert_cmpfloat_with_epsilon (fit->ss_total, 134.856, 1e-9);
  g_assert_cmpfloat_with_epsilon (fit->f, 35.20317073, 1e-7);
  g_assert_cmpfloat_with_epsilon (fit->p, 1.202382538e-05, 1e-12);
  g_assert_cmpfloat_with_epsilon (fit->r2, 0.95135552, 1e-8);
  g_assert_cmpfloat_with_epsilon (fit->r2_adjusted, 0.924330809, 1e-8);
  g_assert_cmpfloat_with_epsilon (fit->sigma, 0.853749898, 1e-8);

  /* At a vertex the prediction is a coefficient; t of 9 degrees is 2.262 in every table, and a new
   * value adds the variance of one value. */
  fm_mix_predict (fit, (const double[]){ 1, 0, 0 }, &at_vertex);
  g_assert_cmpfloat_with_epsilon (at_vertex.mean, coefficient[0], 1e-9);
  g_assert_cmpfloat_with_epsilon (at_vertex.high - at_vertex.mean, 2.262157163 * se[0], 1e-7);
  g_assert_cmpfloat_with_epsilon (at_vertex.new_high - at_vertex.mean,
                                  2.262157163 * sqrt (se[0] * se[0] + 6.56 / 9), 1e-7);
  g_assert_cmpfloat_with_epsilon (at_vertex.new_high + at_vertex.new_low, 2 * at_vertex.mean, 1e-9);

  check_numbers (first->coefficient, linear, 3, 1e-8);
  g_assert_cmpfloat_with_epsilon (first->ss_error, 77.226909091, 1e-8);
  /* six blends: what the quadratic model adds is exactly the lack of fit of the linear one */
  g_assert_cmpuint (first->df_lack, ==, 3);
  g_assert_cmpuint (first->df_pure, ==, 9);
  g_assert_cmpfloat_with_epsilon (first->f_lack, 32.31718, 1e-5);
  g_assert_cmpfloat_with_epsilon (first->p_lack, 3.7865e-05, 1e-9);
  g_assert_true (isnan (fit->f_lack) && isnan (fit->loo_rmse));
}

/* Lawson, Design and Analysis of Experiments with R, ch. 11: data read, results computed. */
static void
test_polvoron (void)
{
  const double quadratic[] = { 3.7843402821,  3.2615655012,  -0.1487372724,
                               10.4879675616, 15.3661737452, 8.9800140265 };
  const double cubic[] = { 4.425917711, 3.518092997, 1.236700234, 6.9003879,
                           8.952765866, 5.313481846, 25.546034177 };
  g_autoptr (FmMixData) data = read_data ("mix_polvoron_data.csv");
  g_autoptr (FmMixFit) second = fit_or_fail (data, FM_MIX_QUADRATIC);
  g_autoptr (FmMixFit) third = fit_or_fail (data, FM_MIX_SPECIAL_CUBIC);

  check_numbers (second->coefficient, quadratic, 6, 1e-8);
  g_assert_cmpfloat_with_epsilon (second->ss_error, 0.5749136922, 1e-9);
  g_assert_cmpfloat_with_epsilon (second->r2, 0.9551306719, 1e-9);
  g_assert_cmpfloat_with_epsilon (second->sigma, 0.3095463595, 1e-9);
  g_assert_cmpuint (second->df_error, ==, 6);

  check_numbers (third->coefficient, cubic, 7, 1e-7);
  g_assert_cmpfloat_with_epsilon (third->ss_error, 0.2818097324, 1e-9);
  g_assert_cmpfloat_with_epsilon (third->r2, 0.9780060668, 1e-9);
  g_assert_cmpfloat_with_epsilon (third->sigma, 0.2374067111, 1e-9);
  g_assert_cmpfloat_with_epsilon (third->ss_total, 12.81306667, 1e-8);
  g_assert_cmpuint (third->df_pure, ==, 2);
  g_assert_cmpfloat_with_epsilon (third->ss_pure, 0.0878, 1e-9);
}

static double
setting (const GPtrArray *rows, guint row, guint effect)
{
  const double z[] = { number (rows, row, 3), number (rows, row, 4), number (rows, row, 5) };
  const guint parts[] = { 0, 1, 2, 4, 3, 5, 6, 7 }; /* bits of z1, z2, z3 by column */
  double product = 1.0;
  for (guint i = 0; i < 3; i++)
    if ((parts[effect] >> i & 1) != 0)
      product *= z[i];
  return product;
}

/* Cornell (2002) pp. 361-365: in the crossed design the coefficients of a process effect are those
 * of the values times the effect's signs. Data read, 56 coefficients computed, column a0 also
 * printed (memory). */
static void
test_fish_patty (void)
{
  g_autoptr (GPtrArray) rows = read_table ("mix_fishpatty_data.csv", ",");
  g_autoptr (GPtrArray) wanted = read_table ("mix_fishpatty_coef.csv", ",");

  for (guint effect = 0; effect < 8; effect++) {
    g_autoptr (FmMixData) data = fm_mix_data_new (3, 0);
    for (guint row = 0; row < rows->len; row++) {
      const double x[] = { number (rows, row, 0), number (rows, row, 1), number (rows, row, 2) };
      fm_mix_data_add (data, x, number (rows, row, 6) * setting (rows, row, effect), NULL);
    }
    g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_SPECIAL_CUBIC);
    for (guint term = 0; term < 7; term++)
      g_assert_cmpfloat_with_epsilon (fit->coefficient[term], number (wanted, term, effect + 1),
                                      1e-9);
  }
}

/* The same with the eight settings as blocks: the coefficients are those at their mean, a0. */
static void
test_fish_patty_blocks (void)
{
  g_autoptr (GPtrArray) rows = read_table ("mix_fishpatty_data.csv", ",");
  g_autoptr (GPtrArray) wanted = read_table ("mix_fishpatty_coef.csv", ",");
  g_autoptr (FmMixData) data = fm_mix_data_new (3, 1);

  for (guint row = 0; row < rows->len; row++) {
    const double x[] = { number (rows, row, 0), number (rows, row, 1), number (rows, row, 2) };
    const guint level = row % 8;
    fm_mix_data_add (data, x, number (rows, row, 6), &level);
  }
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_SPECIAL_CUBIC);
  for (guint term = 0; term < 7; term++)
    g_assert_cmpfloat_with_epsilon (fit->coefficient[term], number (wanted, term, 1), 1e-9);
  g_assert_cmpuint (fit->n_blocks, ==, 7);
  g_assert_cmpuint (fit->df_error, ==, 42);
}

static double
draw_normal (FmRandom *random)
{
  return sqrt (-2 * log (1.0 - fm_random_unit (random))) * cos (2 * G_PI * fm_random_unit (random));
}

/* Fourteen blends within bounds, four tasters in two crossed sessions, some sheets missing */
static FmMixData *
random_panel (void)
{
  FmMixData *data = fm_mix_data_new (4, 2);
  FmRandom random;

  fm_random_init (&random, 2024);
  for (guint blend = 0; blend < 14; blend++) {
    double x[4] = { 0.3, 0.1, 0.05, 0.05 }, part[4], sum = 0.0;
    for (guint i = 0; i < 4; i++)
      sum += part[i] = -log (1.0 - fm_random_unit (&random));
    for (guint i = 0; i < 4; i++)
      x[i] += 0.5 * part[i] / sum;
    for (guint taster = 0; taster < 4; taster++) {
      const guint level[] = { (blend + taster) % 2, taster };
      const double y = 4 + 6 * x[0] * x[1] + level[0] - 0.5 * taster + draw_normal (&random);
      if ((3 * blend + taster) % 7 != 0)
        fm_mix_data_add (data, x, y, level);
    }
  }
  return data;
}

/* The panel and its models as variables of R: d (x1 .. x4, y, s, t, b), f fitted, g saturated */
static char *
panel_script (const FmMixData *data, const char *ask)
{
  g_autoptr (GString) script = g_string_new ("options(contrasts=c('contr.sum','contr.poly'));");
  const guint n = data->x->n;
  g_autofree double *column = g_new (double, n);

  for (guint c = 0; c < 7; c++) {
    static const char *const names[] = { "x1", "x2", "x3", "x4", "y", "s", "t" };
    for (guint row = 0; row < n; row++)
      column[row] = c < 4    ? fm_mix_points_get (data->x, row)[c]
                    : c == 4 ? data->y[row]
                             : data->level[row * 2 + c - 5];
    g_autofree char *values = as_r_vector (column, n);
    g_string_append_printf (script, "%s<-%s;", names[c], values);
  }
  g_string_append (script, "s<-factor(s);t<-factor(t);b<-factor(x1);"
                           "d<-data.frame(x1,x2,x3,x4,y,s,t,b);"
                           "m<-y~0+x1+x2+x3+x4+x1:x2+x1:x3+x1:x4+x2:x3+x2:x4+x3:x4+C+D;"
                           "C<-scale(model.matrix(~s)[,-1,drop=FALSE],scale=FALSE);"
                           "D<-scale(model.matrix(~t)[,-1],scale=FALSE);"
                           "f<-lm(m);g<-lm(y~b+s+t);z<-lm(y~s+t);");
  g_string_append (script, ask);
  return g_string_free (g_steal_pointer (&script), FALSE);
}

/* Random panel with two crossed block factors against R's lm(), contrasts centred over the values:
 * computed. */
static void
test_r_blocks (void)
{
  g_autoptr (FmMixData) data = random_panel ();
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_QUADRATIC);
  g_autofree char *script = panel_script (
      data, "k<-grep('^x',names(coef(f)));v<-vcov(f)[k,k];"
            "x<-c(.4,.3,.2,.1);r<-c(x,x[1]*x[2:4],x[2]*x[3:4],x[3]*x[4]);a<-anova(f,g);"
            "cat(format(c(coef(f)[k],sqrt(diag(v)),deviance(f),deviance(z),df.residual(f),"
            "sum(r*coef(f)[k]),sqrt(t(r)%*%v%*%r),deviance(g),df.residual(g),a$F[2],"
            "a$`Pr(>F)`[2]),digits=15,trim=TRUE))");
  g_autofree double *wanted = ask_r (script, 29);
  const double x[] = { 0.4, 0.3, 0.2, 0.1 };
  FmMixPrediction prediction;

  if (wanted == NULL)
    return;
  check_numbers (fit->coefficient, wanted, 10, 1e-7);
  check_numbers (fit->std_error, wanted + 10, 10, 1e-7);
  g_assert_cmpfloat_with_epsilon (fit->ss_error, wanted[20], 1e-9);
  g_assert_cmpfloat_with_epsilon (fit->ss_total, wanted[21], 1e-9);
  g_assert_cmpfloat (fit->df_error, ==, wanted[22]);
  fm_mix_predict (fit, x, &prediction);
  g_assert_cmpfloat_with_epsilon (prediction.mean, wanted[23], 1e-9);
  g_assert_cmpfloat_with_epsilon (prediction.se_mean, wanted[24], 1e-9);
  g_assert_cmpfloat_with_epsilon (fit->ss_pure, wanted[25], 1e-9);
  g_assert_cmpfloat (fit->df_pure, ==, wanted[26]);
  g_assert_cmpfloat_with_epsilon (fit->f_lack, wanted[27], 1e-8);
  g_assert_cmpfloat_with_epsilon (fit->p_lack, wanted[28], 1e-9);
}

/* Each blend left out and predicted by a model of the rest, at its own session and taster. */
static void
test_r_leave_out (void)
{
  g_autoptr (FmMixData) data = random_panel ();
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_QUADRATIC);
  g_autofree char *script =
      panel_script (data, "X<-model.matrix(f);e<-0;for(l in levels(b)){i<-b==l;"
                          "e<-e+sum((y[i]-X[i,,drop=FALSE]%*%coef(lm(y[!i]~0+X[!i,])))^2)};"
                          "cat(format(sqrt(e/length(y)),digits=15))");
  g_autofree double *wanted = ask_r (script, 1);

  if (wanted != NULL)
    g_assert_cmpfloat_with_epsilon (fit->loo_rmse, wanted[0], 1e-8);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/mix-fit/yarn-nist-5542", test_yarn);
  g_test_add_func ("/reference/mix-fit/polvoron-lawson-11", test_polvoron);
  g_test_add_func ("/reference/mix-fit/fish-patty-cornell-361", test_fish_patty);
  g_test_add_func ("/reference/mix-fit/fish-patty-blocks", test_fish_patty_blocks);
  g_test_add_func ("/reference/mix-fit/r-lm-blocks", test_r_blocks);
  g_test_add_func ("/reference/mix-fit/r-leave-out", test_r_leave_out);
  return g_test_run ();
}

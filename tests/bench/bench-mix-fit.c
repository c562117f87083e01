/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-mix-fit.c - 10 components, 500 trials, quadratic (55 terms), here and by R's lm()
 *
 * Both give coefficients, their errors, R2 and the leave-one-out error; R is given the finished
 * model matrix and is timed without its start.
 */
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>

#include "core/mixture/fm-mix-fit.h"
#include "core/statistics/fm-stat.h"

#define N_COMPONENTS 10
#define N_TRIALS 500
#define N_RUNS 20

static const char r_script[] =
    "d<-as.matrix(read.table(commandArgs(TRUE)[1]));x<-d[,1:10];y<-d[,11];"
    "p<-combn(10,2);X<-cbind(x,x[,p[1,]]*x[,p[2,]]);"
    "t<-system.time(for(i in 1:20){f<-lm(y~0+X);s<-summary(f);"
    "l<-sqrt(mean((residuals(f)/(1-hatvalues(f)))^2))})[['elapsed']]/20;"
    "cat(t*1000,format(l,digits=10))";

static FmMixData *
make_trials (GString *table)
{
  FmMixData *data = fm_mix_data_new (N_COMPONENTS, 0);
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  FmRandom random;

  fm_random_init (&random, 10);
  for (guint row = 0; row < N_TRIALS; row++) {
    double x[N_COMPONENTS], sum = 0.0;
    for (guint i = 0; i < N_COMPONENTS; i++)
      sum += x[i] = -log (1.0 - fm_random_unit (&random));
    for (guint i = 0; i < N_COMPONENTS; i++) {
      x[i] /= sum;
      g_string_append_printf (table, "%s ", g_ascii_dtostr (number, sizeof number, x[i]));
    }
    const double y = 5 * x[0] + 20 * x[1] * x[2] + fm_random_unit (&random);
    g_string_append_printf (table, "%s\n", g_ascii_dtostr (number, sizeof number, y));
    fm_mix_data_add (data, x, y, NULL);
  }
  return data;
}

static char *
run_r (const char *program, const GString *table)
{
  g_autofree char *path = NULL;
  char *out = NULL;
  const int fd = g_file_open_tmp ("bench-mix-XXXXXX", &path, NULL);

  if (fd < 0 || !g_close (fd, NULL) ||
      !g_file_set_contents (path, table->str, (gssize)table->len, NULL))
    return NULL;
  g_autoptr (GSubprocess) process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE, NULL, program,
                                                      "--vanilla", "-e", r_script, path, NULL);
  if (process != NULL)
    g_subprocess_communicate_utf8 (process, NULL, NULL, &out, NULL, NULL);
  g_remove (path);
  return out;
}

int
main (void)
{
  g_autofree char *program = g_find_program_in_path ("Rscript");
  g_autoptr (GString) table = g_string_new (NULL);
  g_autoptr (FmMixData) data = make_trials (table);
  double loo = NAN;
  const gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < N_RUNS; i++) {
    g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);
    loo = fit->loo_rmse;
  }
  const double own_ms = (double)(g_get_monotonic_time () - start) / 1000 / N_RUNS;
  if (program == NULL) {
    g_print ("mixture fit, 10 components, 500 trials: %.2f ms; R is not installed\n", own_ms);
    return 0;
  }
  g_autofree char *out = run_r (program, table);
  g_auto (GStrv) words = g_strsplit (out != NULL ? g_strstrip (out) : "", " ", 2);
  if (words[0] == NULL || words[1] == NULL)
    return 1;
  const double r_ms = g_ascii_strtod (words[0], NULL);
  g_print ("mixture fit, 10 components, 500 trials: %.2f ms (left-out error %.8f), R %.1f ms (%s): "
           "ratio %.3f\n",
           own_ms, loo, r_ms, words[1], own_ms / r_ms);
  return 0;
}

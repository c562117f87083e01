/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-friedman.c - all orders of 8 tasters and 4 samples counted, here and in plain R
 *
 * R convolves the sorted rank sums in the same way, with table sums from rowsum().
 */
#include <gio/gio.h>

#include "core/statistics/fm-rank.h"

#define N_RUNS 50

static const char r_script[] =
    "perms<-function(v) if(length(v)<2) matrix(v,1) else do.call(rbind,lapply(seq_along(v),"
    "function(i) cbind(v[i],perms(v[-i]))));"
    "P<-perms(1:4);"
    "tail<-function(n,s){S<-matrix(1:4,1);w<-1;for(j in 2:n){"
    "N<-S[rep(seq_len(nrow(S)),each=24),,drop=FALSE]+P[rep(1:24,nrow(S)),];W<-rep(w,each=24);"
    "N<-cbind(do.call(pmin,as.data.frame(N)),t(apply(N,1,sort))[,2:4]);"
    "key<-N%*%c(1,64,4096,262144);a<-rowsum(W,key);S<-N[match(as.numeric(rownames(a)),key),,"
    "drop=FALSE];w<-a[,1]};sum(w[rowSums((S-n*2.5)^2)>=s])/sum(w)};"
    "p<-0;t<-system.time(for(i in 1:3) p<-tail(8,80))[['elapsed']]/3;cat(t*1000,p)";

int
main (void)
{
  g_autofree char *program = g_find_program_in_path ("Rscript");
  g_autofree char *out = NULL;
  double p = 0;
  const gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < N_RUNS; i++)
    p = fm_rank_friedman_upper (4, 8, 80);
  const double own_ms = (double)(g_get_monotonic_time () - start) / 1000 / N_RUNS;
  if (program == NULL) {
    g_print ("friedman exact, k=4 n=8: %.2f ms (p %.6f); R is not installed\n", own_ms, p);
    return 0;
  }
  g_autoptr (GSubprocess) process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE, NULL, program,
                                                      "--vanilla", "-e", r_script, NULL);
  if (process == NULL || !g_subprocess_communicate_utf8 (process, NULL, NULL, &out, NULL, NULL))
    return 1;
  g_auto (GStrv) words = g_strsplit (g_strstrip (out), " ", 2);
  if (words[0] == NULL || words[1] == NULL)
    return 1;
  const double r_ms = g_ascii_strtod (words[0], NULL);
  g_print ("friedman exact, k=4 n=8: %.2f ms (p %.6f), R %.1f ms (p %s): ratio %.4f\n", own_ms, p,
           r_ms, words[1], own_ms / r_ms);
  return 0;
}

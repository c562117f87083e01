/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-d-optimal.c - 30 of 252 blends of 6 components for a quadratic model, here and in plain R
 *
 * R runs the same exchange with the same rank-one updates, on whole matrices; no package for it is
 * at hand. It makes a tenth of the starts, so its time is multiplied by ten, and its best choice is
 * of fewer starts.
 */
#include <gio/gio.h>

#include "core/mixture/fm-mix.h"

#define N_COMPONENTS 6
#define N_STEPS 5
#define N_TRIALS 30

static const char r_script[] =
    "L<-function(q,m) if(q==1) matrix(m,1) else do.call(rbind,lapply(m:0,function(k)"
    "cbind(k,L(q-1,m-k))));"
    "x<-L(6,5)/5;p<-combn(6,2);Z<-cbind(x,x[,p[1,]]*x[,p[2,]]);n<-30;"
    "one<-function(){repeat{i<-sample(nrow(Z),n,TRUE);if(qr(Z[i,])$rank==ncol(Z))break};"
    "repeat{M<-solve(crossprod(Z[i,]));d<-rowSums((Z%*%M)*Z);better<-FALSE;"
    "for(s in 1:n){o<-i[s];g<-(1+d)*(1-d[o])+drop(Z%*%(M%*%Z[o,]))^2;j<-which.max(g);"
    "if(g[j]>1+1e-8){for(k in c(j,-o)){e<-sign(k);z<-Z[abs(k),];v<-drop(M%*%z);"
    "f<-e/(1+e*sum(v*z));M<-M-f*tcrossprod(v);d<-d-f*drop(Z%*%v)^2};i[s]<-j;better<-TRUE}};"
    "if(!better)break};determinant(crossprod(Z[i,]))$modulus[1]};"
    "set.seed(1);t<-system.time(b<-replicate(4,one()))[['elapsed']];"
    "cat(t*10000,sprintf('%.6f',max(b)))";

int
main (void)
{
  g_autofree char *program = g_find_program_in_path ("Rscript");
  g_autofree char *out = NULL;
  g_autoptr (FmMixPoints) candidates = fm_mix_lattice (N_COMPONENTS, N_STEPS, NULL);
  const gint64 start = g_get_monotonic_time ();
  g_autoptr (FmMixChoice) choice =
      fm_mix_d_optimal (candidates, FM_MIX_QUADRATIC, N_TRIALS, NULL, 1, NULL, NULL);
  const double own_ms = (double)(g_get_monotonic_time () - start) / 1000;

  if (program == NULL) {
    g_print ("D-optimal, 30 of 252 blends: %.1f ms (log det %.6f); R is not installed\n", own_ms,
             choice->log_det);
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
  g_print ("D-optimal, 30 of 252 blends: %.1f ms (log det %.6f), R %.0f ms (%s): ratio %.4f\n",
           own_ms, choice->log_det, r_ms, words[1], own_ms / r_ms);
  return 0;
}

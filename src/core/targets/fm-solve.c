/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-solve.c - linear programs, solved by GLPK without a word on the terminal */
#include "core/targets/fm-solve.h"

#include <glpk.h>
#include <math.h>

/* Beyond this the library's own tolerances mean nothing. */
#define MAX_MAGNITUDE 1e12
/* A program of this size ends in milliseconds; the cap only guards against cycling. */
#define MAX_PIVOTS 20000
/* Tighter than the library's own, since a target that is missed by 1e-7 shows as missed. */
#define LIMIT_TOLERANCE 1e-9
/* A whole-number answer this close (relatively) to the best one is good enough. */
#define WHOLE_GAP 1e-3

struct _FmSolver {
  glp_prob *problem;
  gboolean unusable; /* was given a number that cannot be computed with */
  gboolean scaled;
  gboolean whole; /* the last run was fm_solver_run_whole() */
};

/* GLPK keeps an environment in each thread that uses it, and the thread's end does not free it. */
static GPrivate n_in_thread;

static void
count_in_thread (int change)
{
  int n = GPOINTER_TO_INT (g_private_get (&n_in_thread)) + change;
  g_private_set (&n_in_thread, GINT_TO_POINTER (n));
  if (n == 0)
    glp_free_env ();
}

FmSolver *
fm_solver_new (guint n_rows, guint n_columns)
{
  FmSolver *self = g_new0 (FmSolver, 1);
  count_in_thread (1);
  glp_term_out (GLP_OFF);
  self->problem = glp_create_prob ();
  glp_set_obj_dir (self->problem, GLP_MIN);
  if (n_rows > 0)
    glp_add_rows (self->problem, (int)n_rows);
  if (n_columns > 0)
    glp_add_cols (self->problem, (int)n_columns);
  for (guint i = 0; i < n_rows; i++)
    fm_solver_set_row_limits (self, i, NAN, NAN);
  for (guint j = 0; j < n_columns; j++)
    fm_solver_set_column (self, j, 0.0, NAN);
  return self;
}

void
fm_solver_free (FmSolver *self)
{
  glp_delete_prob (self->problem);
  g_free (self);
  count_in_thread (-1);
}

static int
index_of (guint from_zero)
{
  return (int)from_zero + 1;
}

static gboolean
accept (FmSolver *self, double value)
{
  gboolean usable = fabs (value) <= MAX_MAGNITUDE;
  self->unusable |= !usable;
  return usable;
}

/* Limits that differ by rounding alone: scaling can make them equal, where the library ends the
 * program if they were announced as a range. */
static gboolean
is_one_value (double min, double max)
{
  return max - min <= 1e-13 * MAX (fabs (min), fabs (max));
}

static int
limit_type (double min, double max)
{
  if (isnan (min))
    return isnan (max) ? GLP_FR : GLP_UP;
  if (isnan (max))
    return GLP_LO;
  return is_one_value (min, max) ? GLP_FX : GLP_DB;
}

static gboolean
accept_limits (FmSolver *self, double min, double max)
{
  gboolean usable = (isnan (min) || accept (self, min)) && (isnan (max) || accept (self, max));
  /* Crossed limits have no solution; the library would take the lower one alone. */
  self->unusable |= min > max;
  return usable && !(min > max);
}

void
fm_solver_set_cost (FmSolver *self, guint column, double cost)
{
  if (accept (self, cost))
    glp_set_obj_coef (self->problem, index_of (column), cost);
}

void
fm_solver_set_column (FmSolver *self, guint column, double min, double max)
{
  if (accept_limits (self, min, max))
    glp_set_col_bnds (self->problem, index_of (column), limit_type (min, max), min, max);
}

void
fm_solver_set_row_limits (FmSolver *self, guint row, double min, double max)
{
  if (accept_limits (self, min, max))
    glp_set_row_bnds (self->problem, index_of (row), limit_type (min, max), min, max);
}

void
fm_solver_set_row (FmSolver *self, guint row, const double *coefficients)
{
  int n = glp_get_num_cols (self->problem);
  g_autofree int *columns = g_new (int, n + 1);
  g_autofree double *values = g_new (double, n + 1);
  int used = 0;
  for (int j = 0; j < n; j++) {
    if (!accept (self, coefficients[j]))
      return;
    if (coefficients[j] == 0.0)
      continue;
    columns[++used] = j + 1;
    values[used] = coefficients[j];
  }
  glp_set_mat_row (self->problem, index_of (row), used, columns, values);
}

void
fm_solver_set_whole (FmSolver *self, guint column)
{
  glp_set_col_kind (self->problem, index_of (column), GLP_IV);
}

static int
simplex (FmSolver *self, int method)
{
  glp_smcp options;
  glp_init_smcp (&options);
  options.msg_lev = GLP_MSG_OFF;
  options.meth = method;
  options.it_lim = MAX_PIVOTS;
  options.tol_bnd = LIMIT_TOLERANCE;
  options.tol_dj = LIMIT_TOLERANCE;
  return glp_simplex (self->problem, &options);
}

static FmSolveStatus
status_of (int status)
{
  switch (status) {
  case GLP_OPT:
    return FM_SOLVE_OPTIMAL;
  case GLP_NOFEAS:
    return FM_SOLVE_INFEASIBLE;
  case GLP_UNBND:
    return FM_SOLVE_UNBOUNDED;
  default:
    return FM_SOLVE_FAILED;
  }
}

FmSolveStatus
fm_solver_run (FmSolver *self)
{
  if (self->unusable)
    return FM_SOLVE_FAILED;
  self->whole = FALSE;
  if (!self->scaled)
    glp_scale_prob (self->problem, GLP_SF_AUTO);
  self->scaled = TRUE;
  /* Limits change more often than costs between runs: the dual method goes on from there. */
  int failed = simplex (self, GLP_DUALP);
  FmSolveStatus status = failed ? FM_SOLVE_FAILED : status_of (glp_get_status (self->problem));
  if (status != FM_SOLVE_FAILED)
    return status;
  glp_std_basis (self->problem);
  failed = simplex (self, GLP_PRIMAL);
  return failed ? FM_SOLVE_FAILED : status_of (glp_get_status (self->problem));
}

static void
stop_at_nodes_cb (glp_tree *tree, void *max_nodes)
{
  int n_nodes = 0;
  glp_ios_tree_size (tree, NULL, NULL, &n_nodes);
  if (n_nodes > *(const int *)max_nodes)
    glp_ios_terminate (tree);
}

FmSolveStatus
fm_solver_run_whole (FmSolver *self, int max_nodes)
{
  if (self->unusable)
    return FM_SOLVE_FAILED;
  self->whole = TRUE;
  glp_iocp options;
  glp_init_iocp (&options);
  options.msg_lev = GLP_MSG_OFF;
  options.presolve = GLP_ON;
  options.cb_func = stop_at_nodes_cb;
  options.cb_info = &max_nodes;
  options.mip_gap = WHOLE_GAP;
  int failed = glp_intopt (self->problem, &options);
  if (failed == GLP_ENOPFS)
    return FM_SOLVE_INFEASIBLE;
  int status = glp_mip_status (self->problem);
  /* Out of nodes with a point in hand is still a point. */
  return status == GLP_FEAS ? FM_SOLVE_OPTIMAL : status_of (status);
}

double
fm_solver_objective (const FmSolver *self)
{
  return self->whole ? glp_mip_obj_val (self->problem) : glp_get_obj_val (self->problem);
}

double
fm_solver_column (const FmSolver *self, guint column)
{
  return self->whole ? glp_mip_col_val (self->problem, index_of (column))
                     : glp_get_col_prim (self->problem, index_of (column));
}

double
fm_solver_dual (const FmSolver *self, guint row)
{
  return glp_get_row_dual (self->problem, index_of (row));
}

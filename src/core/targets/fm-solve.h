/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-solve.h - linear programs, solved by GLPK without a word on the terminal
 *
 * A thin layer: nothing above it knows which library does the work. Numbers that are not finite,
 * or too large to compute with, are refused here because the library would end the program.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_SOLVE_OPTIMAL,
  FM_SOLVE_INFEASIBLE, /* no point meets every limit */
  FM_SOLVE_UNBOUNDED,  /* the objective can fall without end */
  FM_SOLVE_FAILED,     /* stopped: numerical trouble or out of nodes */
} FmSolveStatus;

/** A program: minimise cost x subject to row limits on A x and column limits on x. */
typedef struct _FmSolver FmSolver;

/** Columns start within [0, open) at cost 0, rows empty and open. Freed in the thread that made it.
 */
FmSolver *fm_solver_new (guint n_rows, guint n_columns);
void fm_solver_free (FmSolver *self);
void fm_solver_set_cost (FmSolver *self, guint column, double cost);
/** Limits of column @column; NaN = open on that side. */
void fm_solver_set_column (FmSolver *self, guint column, double min, double max);
/** All coefficients of row @row: (array length=n_columns). */
void fm_solver_set_row (FmSolver *self, guint row, const double *coefficients);
/** Limits of row @row; NaN = open on that side. Costs and limits may change between two runs. */
void fm_solver_set_row_limits (FmSolver *self, guint row, double min, double max);
/** Columns that must be whole numbers make fm_solver_run_whole() a mixed program. */
void fm_solver_set_whole (FmSolver *self, guint column);
/** Continuous optimum; starts from where the last run ended. */
FmSolveStatus fm_solver_run (FmSolver *self);
/**
 * Optimum with whole columns, or the best point met within @max_nodes nodes of the search; FAILED
 * without one. Work is bounded by count alone, so that the answer is the same on any machine.
 */
FmSolveStatus fm_solver_run_whole (FmSolver *self, int max_nodes);

/* What the last optimal run found. Duals are of continuous runs only. */
double fm_solver_objective (const FmSolver *self);
double fm_solver_column (const FmSolver *self, guint column);
/** Change of the objective per unit that the binding limit of @row moves up; 0 = not binding. */
double fm_solver_dual (const FmSolver *self, guint row);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmSolver, fm_solver_free)

G_END_DECLS

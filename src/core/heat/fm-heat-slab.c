/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/heat/fm-heat-slab.h"

#include <math.h>

/* Ten times more than a step has ever needed. */
#define MAX_ITERATIONS 60
#define CONVERGED_K 1e-8

typedef enum {
  CELL_FREE,    /* heats or cools */
  CELL_BOILING, /* stays at the boiling point, water left over */
  CELL_DRYING,  /* its last water goes within the step; then it heats on */
} CellMode;

typedef struct {
  double temp_c;
  double before_c;   /* at the step's begin */
  double water_kg;   /* per m2, like all of a cell */
  double k_w_m_k;    /* at the step's begin */
  double capacity_j; /* secant of the enthalpy over the step, J/(m2 K) */
  CellMode mode;
  /* row of the linear system */
  double lower, diagonal, upper, right;
} Cell;

struct _FmHeatSlab {
  guint n;
  Cell *cells;
  double cell_m;
  double boiling_c;
  gboolean constant;
  double constant_k;
  FmThermalMix mix;
  double raw_water_kg; /* of one cell */
  double dry_cp[3];    /* of all but the water of one cell, J/(m2 K) */
  double water_cp[3];  /* of 1 kg */
  double in_j_m2;
  double evaporated_kg;
};

static double
integral (const double a[3], double t)
{
  return t * (a[0] + t * (a[1] / 2.0 + t * a[2] / 3.0));
}

static double
mean_slope (const double a[3], double from, double to)
{
  return a[0] + a[1] * (from + to) / 2.0 + a[2] * (from * from + from * to + to * to) / 3.0;
}

static FmHeatSlab *
slab_new (double thickness_m, guint n_cells, double start_c)
{
  FmHeatSlab *self = g_new0 (FmHeatSlab, 1);

  self->n = n_cells;
  self->cells = g_new0 (Cell, n_cells);
  self->cell_m = thickness_m / n_cells;
  self->boiling_c = INFINITY;
  for (guint i = 0; i < n_cells; i++)
    self->cells[i].temp_c = start_c;
  return self;
}

FmHeatSlab *
fm_heat_slab_new (const FmThermalMix *mix,
                  double rho_kg_m3,
                  double thickness_m,
                  guint n_cells,
                  double start_c,
                  double boiling_c)
{
  FmHeatSlab *self = slab_new (thickness_m, n_cells, start_c);
  FmThermalMix part = *mix;
  double cell_kg = rho_kg_m3 * self->cell_m;

  self->mix = *mix;
  self->boiling_c = boiling_c;
  self->raw_water_kg = cell_kg * mix->fraction[FM_COMPONENT_WATER];
  for (guint i = 0; i < n_cells; i++)
    self->cells[i].water_kg = self->raw_water_kg;

  part.fraction[FM_COMPONENT_WATER] = 0;
  fm_thermal_cp_polynomial (&part, self->dry_cp);
  for (int power = 0; power < 3; power++)
    self->dry_cp[power] *= cell_kg;
  part = (FmThermalMix){ { [FM_COMPONENT_WATER] = 1.0 } };
  fm_thermal_cp_polynomial (&part, self->water_cp);
  return self;
}

FmHeatSlab *
fm_heat_slab_new_constant (const FmHeatConstant *constant,
                           double thickness_m,
                           guint n_cells,
                           double start_c)
{
  FmHeatSlab *self = slab_new (thickness_m, n_cells, start_c);

  self->constant = TRUE;
  self->constant_k = constant->k_w_m_k;
  self->dry_cp[0] = constant->rho_kg_m3 * self->cell_m * constant->cp_j_kg_k;
  return self;
}

void
fm_heat_slab_free (FmHeatSlab *self)
{
  if (self == NULL)
    return;
  g_free (self->cells);
  g_free (self);
}

/* Water that has gone leaves pores full of steam: the layer keeps its thickness. */
static double
conductivity (const FmHeatSlab *self, const Cell *cell)
{
  FmThermalMix mix = self->mix;
  FmThermalProperties raw, left;
  double filled;

  if (self->constant)
    return self->constant_k;
  fm_thermal_properties (&mix, cell->temp_c, &raw);
  if (cell->water_kg >= self->raw_water_kg)
    return raw.k_parallel_w_m_k;

  double water_left = cell->water_kg / self->raw_water_kg;
  double mass_left = 1.0 - mix.fraction[FM_COMPONENT_WATER] * (1.0 - water_left);
  mix.fraction[FM_COMPONENT_WATER] *= water_left;
  for (int i = 0; i < FM_N_COMPONENTS; i++)
    mix.fraction[i] /= mass_left;
  fm_thermal_properties (&mix, cell->temp_c, &left);
  filled = fmin (mass_left * raw.rho_kg_m3 / left.rho_kg_m3, 1.0);
  return filled * left.k_parallel_w_m_k + (1.0 - filled) * FM_STEAM_K_W_M_K;
}

/* W/(m2 K) between the middles of two neighbours. */
static double
between (const FmHeatSlab *self, guint i)
{
  double a = self->cells[i].k_w_m_k;
  double b = self->cells[i + 1].k_w_m_k;

  return 2.0 * a * b / (a + b) / self->cell_m;
}

static double
through_face (const FmHeatSlab *self, const Cell *cell, const FmHeatFace *face)
{
  if (face->h_w_m2k <= 0)
    return 0;
  return 1.0 / (1.0 / face->h_w_m2k + self->cell_m / 2.0 / cell->k_w_m_k);
}

static double
cell_capacity (const FmHeatSlab *self, const Cell *cell)
{
  double dry = mean_slope (self->dry_cp, cell->before_c, cell->temp_c);

  if (self->constant || cell->mode == CELL_DRYING)
    return dry;
  return dry + cell->water_kg * mean_slope (self->water_cp, cell->before_c, cell->temp_c);
}

/* Heat that the last water of a cell takes: up to the boiling point and off. */
static double
drying_heat (const FmHeatSlab *self, const Cell *cell)
{
  double liquid =
      integral (self->water_cp, self->boiling_c) - integral (self->water_cp, cell->before_c);

  return cell->water_kg * (FM_WATER_LATENT_J_KG + liquid);
}

static void
assemble_cell (FmHeatSlab *self, guint i, const FmHeatFace faces[2], double step_s)
{
  Cell *cell = &self->cells[i];
  double before = i > 0 ? between (self, i - 1) : 0;
  double after = i + 1 < self->n ? between (self, i) : 0;

  cell->capacity_j = cell_capacity (self, cell);
  cell->lower = -before;
  cell->upper = -after;
  cell->diagonal = cell->capacity_j / step_s + before + after;
  cell->right = cell->capacity_j / step_s * cell->before_c;
  if (i == 0) {
    double face = through_face (self, cell, &faces[0]);
    cell->diagonal += face;
    cell->right += face * faces[0].surround_c;
  }
  if (i + 1 == self->n) {
    double face = through_face (self, cell, &faces[1]);
    cell->diagonal += face;
    cell->right += face * faces[1].surround_c;
  }
  if (cell->mode == CELL_DRYING)
    cell->right -= drying_heat (self, cell) / step_s;
}

/* Left to right elimination of the tridiagonal system; the rows themselves stay as they are.
 * Returns: the largest change of a temperature. */
static double
solve (FmHeatSlab *self)
{
  double *upper = g_newa (double, self->n);
  double *right = g_newa (double, self->n);
  double change = 0;

  for (guint i = 0; i < self->n; i++) {
    Cell *cell = &self->cells[i];
    gboolean fixed = cell->mode == CELL_BOILING;
    double lower = fixed || i == 0 ? 0 : cell->lower;
    double diagonal = fixed ? 1.0 : cell->diagonal;
    double pivot = diagonal - (i > 0 ? lower * upper[i - 1] : 0);

    upper[i] = fixed ? 0 : cell->upper / pivot;
    right[i] =
        ((fixed ? self->boiling_c : cell->right) - (i > 0 ? lower * right[i - 1] : 0)) / pivot;
  }
  for (guint i = self->n; i-- > 0;) {
    double temp_c = right[i] - (i + 1 < self->n ? upper[i] * self->cells[i + 1].temp_c : 0);
    change = fmax (change, fabs (temp_c - self->cells[i].temp_c));
    self->cells[i].temp_c = temp_c;
  }
  return change;
}

/* Heat left over in a cell held at the boiling point, W/m2. */
static double
boiling_heat (const FmHeatSlab *self, guint i)
{
  const Cell *cell = &self->cells[i];
  double heat = cell->right - cell->diagonal * cell->temp_c;

  if (i > 0)
    heat -= cell->lower * self->cells[i - 1].temp_c;
  if (i + 1 < self->n)
    heat -= cell->upper * self->cells[i + 1].temp_c;
  return heat;
}

static CellMode
next_mode (const FmHeatSlab *self, guint i, double step_s)
{
  const Cell *cell = &self->cells[i];
  double heat;

  if (cell->water_kg <= 0)
    return CELL_FREE;
  switch (cell->mode) {
  case CELL_BOILING:
    heat = boiling_heat (self, i) * step_s;
    if (heat < 0)
      return CELL_FREE;
    return heat >= cell->water_kg * FM_WATER_LATENT_J_KG ? CELL_DRYING : CELL_BOILING;
  case CELL_DRYING:
    return cell->temp_c < self->boiling_c - CONVERGED_K ? CELL_BOILING : CELL_DRYING;
  case CELL_FREE:
    return cell->temp_c > self->boiling_c + CONVERGED_K ? CELL_BOILING : CELL_FREE;
  }
  g_return_val_if_reached (CELL_FREE);
}

/* Finds modes and temperatures that agree with each other. */
static void
iterate (FmHeatSlab *self, const FmHeatFace faces[2], double step_s)
{
  for (guint round = 0; round < MAX_ITERATIONS; round++) {
    gboolean switched = FALSE;
    double change;

    for (guint i = 0; i < self->n; i++)
      assemble_cell (self, i, faces, step_s);
    change = solve (self);
    /* Too many rounds of switching would mean two cells in a dance: keep what there is then. */
    for (guint i = 0; i < self->n && round < MAX_ITERATIONS / 2; i++) {
      CellMode mode = next_mode (self, i, step_s);
      switched |= mode != self->cells[i].mode;
      self->cells[i].mode = mode;
    }
    if (!switched && change < CONVERGED_K)
      return;
  }
}

static void
take_water (FmHeatSlab *self, double step_s)
{
  for (guint i = 0; i < self->n; i++) {
    Cell *cell = &self->cells[i];
    double gone = 0;

    if (cell->mode == CELL_DRYING)
      gone = cell->water_kg;
    else if (cell->mode == CELL_BOILING)
      gone = CLAMP (boiling_heat (self, i) * step_s / FM_WATER_LATENT_J_KG, 0, cell->water_kg);
    self->evaporated_kg += gone;
    cell->water_kg -= gone;
  }
}

void
fm_heat_slab_step (FmHeatSlab *self, const FmHeatFace faces[2], double step_s)
{
  Cell *first = &self->cells[0];
  Cell *last = &self->cells[self->n - 1];

  for (guint i = 0; i < self->n; i++) {
    Cell *cell = &self->cells[i];
    cell->before_c = cell->temp_c;
    cell->k_w_m_k = conductivity (self, cell);
    cell->mode = cell->water_kg > 0 && cell->temp_c >= self->boiling_c - CONVERGED_K ? CELL_BOILING
                                                                                     : CELL_FREE;
  }
  iterate (self, faces, step_s);
  take_water (self, step_s);
  self->in_j_m2 +=
      step_s * (through_face (self, first, &faces[0]) * (faces[0].surround_c - first->temp_c) +
                through_face (self, last, &faces[1]) * (faces[1].surround_c - last->temp_c));
}

double
fm_heat_slab_temp_c (const FmHeatSlab *self, guint cell)
{
  return self->cells[cell].temp_c;
}

double
fm_heat_slab_face_c (const FmHeatSlab *self, guint face, const FmHeatFace *surround)
{
  const Cell *cell = &self->cells[face == 0 ? 0 : self->n - 1];
  double inside = 2.0 * conductivity (self, cell) / self->cell_m;

  return (surround->h_w_m2k * surround->surround_c + inside * cell->temp_c) /
         (surround->h_w_m2k + inside);
}

double
fm_heat_slab_in_j_m2 (const FmHeatSlab *self)
{
  return self->in_j_m2;
}

double
fm_heat_slab_stored_j_m2 (const FmHeatSlab *self)
{
  double sum = 0;

  for (guint i = 0; i < self->n; i++) {
    const Cell *cell = &self->cells[i];
    sum += integral (self->dry_cp, cell->temp_c) +
           cell->water_kg * integral (self->water_cp, cell->temp_c);
  }
  return sum;
}

double
fm_heat_slab_boiled_j_m2 (const FmHeatSlab *self)
{
  if (self->evaporated_kg <= 0)
    return 0;
  return self->evaporated_kg * (FM_WATER_LATENT_J_KG + integral (self->water_cp, self->boiling_c));
}

double
fm_heat_slab_evaporated_kg_m2 (const FmHeatSlab *self)
{
  return self->evaporated_kg;
}

double
fm_heat_slab_crust_m (const FmHeatSlab *self)
{
  guint n_dry = 0;

  for (guint i = 0; i < self->n && !self->constant; i++)
    n_dry += self->cells[i].water_kg <= 0;
  return n_dry * self->cell_m;
}

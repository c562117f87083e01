/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-blend.c - a formula divided into the components of a mixture and a fixed part */
#include "core/mixture/fm-mix-blend.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/targets/fm-targets-private.h"

#define FIXED (-1)

static FmMixComponent *
component_at (const GPtrArray *components, guint index)
{
  return g_ptr_array_index (components, index);
}

static const char *
identity_at (const FmFormula *formula, guint line)
{
  return fm_ingredient_identity (fm_formula_line (formula, line)->ingredient);
}

/* Which component @identity belongs to, and as which of its members; FIXED for none. */
static int
find_member (const GPtrArray *components, const char *identity, guint *member)
{
  for (guint c = 0; c < components->len; c++)
    if (g_ptr_array_find_with_equal_func (component_at (components, c)->members, identity,
                                          g_str_equal, member))
      return (int)c;
  return FIXED;
}

/* All lines of one ingredient together; @n_lines: (out) (optional) */
static double
mass_of (const FmFormula *formula, const char *identity, guint *n_lines)
{
  double mass_g = 0.0;
  guint n = 0;
  for (guint i = 0; i < fm_formula_n_lines (formula); i++)
    if (g_str_equal (identity_at (formula, i), identity)) {
      mass_g += fm_formula_line (formula, i)->mass_g;
      n++;
    }
  if (n_lines != NULL)
    *n_lines = n;
  return mass_g;
}

static double
component_mass (const FmFormula *formula, const FmMixComponent *component)
{
  double mass_g = 0.0;
  for (guint m = 0; m < component->members->len; m++)
    mass_g += mass_of (formula, g_ptr_array_index (component->members, m), NULL);
  return mass_g;
}

static double
mixture_mass (const FmFormula *formula, const GPtrArray *components)
{
  double mass_g = 0.0;
  for (guint c = 0; c < components->len; c++)
    mass_g += component_mass (formula, component_at (components, c));
  return mass_g;
}

static gboolean
check_component (const FmFormula *base, const GPtrArray *components, guint index, GError **error)
{
  const FmMixComponent *component = component_at (components, index);
  if (component->members->len == 0) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("The component %s has no ingredient. Give it one, or take it away."),
                 component->name);
    return FALSE;
  }
  for (guint m = 0; m < component->members->len; m++) {
    const char *identity = g_ptr_array_index (component->members, m);
    guint n_lines = 0, first_member = 0;
    mass_of (base, identity, &n_lines);
    if (n_lines == 0) {
      g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                   _ ("An ingredient of %s is not in this blend. Choose the component again."),
                   component->name);
      return FALSE;
    }
    if (find_member (components, identity, &first_member) == (int)index && first_member == m)
      continue;
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("An ingredient of %s is in the mixture twice. Each may be in one component "
                    "only."),
                 component->name);
    return FALSE;
  }
  return TRUE;
}

static gboolean
check_masses (const FmFormula *base, const GPtrArray *components, GError **error)
{
  const double mixture_g = mixture_mass (base, components);
  const double total_g = fm_formula_total_g (base);
  if (mixture_g > 0.0 && isfinite (total_g))
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
               _ ("The components weigh nothing in this blend. Type their masses first."));
  return FALSE;
}

static gboolean
check_input (const FmFormula *base, const GPtrArray *components, GError **error)
{
  if (components->len < FM_MIX_BLEND_MIN_COMPONENTS ||
      components->len > FM_MIX_BLEND_MAX_COMPONENTS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Choose %d to %d components for the mixture."), FM_MIX_BLEND_MIN_COMPONENTS,
                 FM_MIX_BLEND_MAX_COMPONENTS);
    return FALSE;
  }
  for (guint c = 0; c < components->len; c++)
    if (!check_component (base, components, c, error))
      return FALSE;
  return check_masses (base, components, error);
}

static void
fill_ratio (FmMixComponent *component, const FmFormula *base)
{
  const double mass_g = component_mass (base, component);
  const guint n = component->members->len;
  g_array_set_size (component->ratio, 0);
  for (guint m = 0; m < n; m++) {
    const double member_g = mass_of (base, g_ptr_array_index (component->members, m), NULL);
    const double ratio = mass_g > 0.0 ? member_g / mass_g : 1.0 / n;
    g_array_append_val (component->ratio, ratio);
  }
}

FmMixBlend *
fm_mix_blend_new (const FmFormula *base, const GPtrArray *components, GError **error)
{
  if (!check_input (base, components, error))
    return NULL;

  FmMixBlend *self = g_new0 (FmMixBlend, 1);
  self->base = fm_formula_copy (base);
  self->components = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_mix_component_free);
  for (guint c = 0; c < components->len; c++) {
    FmMixComponent *component = fm_mix_component_copy (component_at (components, c));
    fill_ratio (component, base);
    g_ptr_array_add (self->components, component);
  }
  fm_mix_region_init (&self->region, components->len);
  self->mixture_share = mixture_mass (base, components) / fm_formula_total_g (base);
  return self;
}

void
fm_mix_blend_free (FmMixBlend *self)
{
  g_ptr_array_unref (self->components);
  fm_formula_free (self->base);
  g_free (self);
}

/* Part of its component that line @index of the base takes; lines of one ingredient divide the
 * member's part as they do now. */
static double
line_ratio (const FmMixBlend *self, guint index, int *component)
{
  const char *identity = identity_at (self->base, index);
  guint member = 0, n_lines = 0;
  *component = find_member (self->components, identity, &member);
  if (*component == FIXED)
    return NAN;
  const double member_g = mass_of (self->base, identity, &n_lines);
  const double part =
      member_g > 0.0 ? fm_formula_line (self->base, index)->mass_g / member_g : 1.0 / n_lines;
  const FmMixComponent *owner = component_at (self->components, (guint)*component);
  return part * g_array_index (owner->ratio, double, member);
}

FmFormula *
fm_mix_blend_apply (const FmMixBlend *self, const double *x)
{
  FmFormula *formula = fm_formula_copy (self->base);
  const double mixture_g = mixture_mass (self->base, self->components);
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    FmFormulaLine *line = fm_formula_line (formula, i);
    int component = FIXED;
    const double ratio = line_ratio (self, i, &component);
    if (component == FIXED)
      continue;
    const double mass_g = MAX (x[component], 0.0) * ratio * mixture_g;
    /* A mass that only rounding moves stays as it was typed. */
    if (fabs (mass_g - line->mass_g) <= FM_MIX_EPSILON * mixture_g)
      continue;
    line->mass_g = mass_g;
    line->locked = FALSE;
  }
  return formula;
}

void
fm_mix_blend_base_x (const FmMixBlend *self, double *x)
{
  const double mixture_g = mixture_mass (self->base, self->components);
  for (guint c = 0; c < self->components->len; c++)
    x[c] = component_mass (self->base, component_at (self->components, c)) / mixture_g;
}

/* The base's bands but for @band, so that its rows are one. */
static FmTargets *
targets_of_one_band (const FmFormula *base, FmTargetKind kind, const FmBand *band)
{
  g_autoptr (FmFormula) copy = fm_formula_copy (base);
  for (int i = 0; i < FM_N_TARGETS; i++)
    copy->brief->bands[i] = (FmBand){ NAN, NAN };
  copy->brief->bands[kind] = *band;
  return fm_targets_new_from_formula (copy);
}

static char *
names_joined (GPtrArray *names)
{
  if (names->len == 0)
    return NULL;
  g_ptr_array_add (names, NULL);
  return g_strjoinv (", ", (char **)names->pdata);
}

gboolean
fm_mix_blend_limit (const FmMixBlend *self,
                    FmTargetKind kind,
                    const FmBand *band,
                    FmMixLimit *limit,
                    char **unknown)
{
  if (unknown != NULL)
    *unknown = NULL;
  if (isnan (band->min) && isnan (band->max))
    return FALSE;

  g_autoptr (FmTargets) targets = targets_of_one_band (self->base, kind, band);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  const double total_g = fm_formula_total_g (self->base);
  double fixed = 0.0;
  *limit = (FmMixLimit){ .low = isnan (band->min) ? -INFINITY : band->min,
                         .high = isnan (band->max) ? INFINITY : band->max };
  for (guint i = 0; i < fm_formula_n_lines (self->base); i++) {
    const FmFormulaLine *line = fm_formula_line (self->base, i);
    const double value =
        fm_target_row_amount (g_ptr_array_index (targets->rows, 0), line->ingredient);
    int component = FIXED;
    const double ratio = line_ratio (self, i, &component);
    const double share = component == FIXED ? line->mass_g / total_g : ratio * self->mixture_share;
    if (!(share > 0.0))
      continue;
    if (isnan (value) &&
        !g_ptr_array_find_with_equal_func (names, line->ingredient->name, g_str_equal, NULL))
      g_ptr_array_add (names, line->ingredient->name);
    *(component == FIXED ? &fixed : &limit->a[component]) += share * value;
  }
  /* The shares sum to 1, so what is fixed goes to each: a_i is the blend of component i alone. */
  for (guint c = 0; c < self->components->len; c++)
    limit->a[c] += fixed;
  g_autofree char *joined = names_joined (names);
  const gboolean known = joined == NULL;
  if (unknown != NULL)
    *unknown = g_steal_pointer (&joined);
  return known;
}

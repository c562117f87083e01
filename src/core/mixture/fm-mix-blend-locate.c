/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-blend-locate.c - where another version lies among the components of a mixture */
#include "core/mixture/fm-mix-blend.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

/* Parts of 1; common practice, no source: what a kitchen scale and a changed pinch make. */
#define OTHER_SHARE 0.02
#define GROUP_RATIO 0.02
#define FIXED_SHARE 0.02
#define ROUNDING 1e-9

/* The masses of two formulas by ingredient, in the order that the ingredients come up. */
typedef struct {
  GPtrArray *identity; /* char*, unowned */
  GPtrArray *name;     /* char*, unowned */
  GArray *base;        /* double, shares of the base */
  GArray *other;       /* double, shares of the other formula */
} Inventory;

static void
inventory_add (Inventory *self, const FmFormula *formula, gboolean is_base)
{
  const double total_g = fm_formula_total_g (formula), none = 0.0;
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    const char *identity = fm_ingredient_identity (line->ingredient);
    guint at = 0;
    if (!g_ptr_array_find_with_equal_func (self->identity, identity, g_str_equal, &at)) {
      at = self->identity->len;
      g_ptr_array_add (self->identity, (gpointer)identity);
      g_ptr_array_add (self->name, line->ingredient->name);
      g_array_append_val (self->base, none);
      g_array_append_val (self->other, none);
    }
    g_array_index (is_base ? self->base : self->other, double, at) += line->mass_g / total_g;
  }
}

static void
inventory_init (Inventory *self, const FmFormula *base, const FmFormula *other)
{
  self->identity = g_ptr_array_new ();
  self->name = g_ptr_array_new ();
  self->base = g_array_new (FALSE, FALSE, sizeof (double));
  self->other = g_array_new (FALSE, FALSE, sizeof (double));
  inventory_add (self, base, TRUE);
  inventory_add (self, other, FALSE);
}

static void
inventory_clear (Inventory *self)
{
  g_ptr_array_unref (self->identity);
  g_ptr_array_unref (self->name);
  g_array_unref (self->base);
  g_array_unref (self->other);
}

static gboolean
is_member (const FmMixBlend *blend, const char *identity)
{
  for (guint c = 0; c < blend->components->len; c++) {
    const FmMixComponent *component = g_ptr_array_index (blend->components, c);
    if (g_ptr_array_find_with_equal_func (component->members, identity, g_str_equal, NULL))
      return TRUE;
  }
  return FALSE;
}

static double
other_share (const Inventory *self, const char *identity)
{
  guint at = 0;
  return g_ptr_array_find_with_equal_func (self->identity, identity, g_str_equal, &at)
             ? g_array_index (self->other, double, at)
             : 0.0;
}

static gboolean
check_others (const FmMixBlend *blend, const Inventory *inventory, char **reason)
{
  double sum = 0.0, most = 0.0;
  guint worst = 0;
  for (guint i = 0; i < inventory->identity->len; i++) {
    const double share = g_array_index (inventory->other, double, i);
    if (g_array_index (inventory->base, double, i) > 0.0 ||
        is_member (blend, g_ptr_array_index (inventory->identity, i)))
      continue;
    sum += share;
    if (share > most) {
      most = share;
      worst = i;
    }
  }
  if (sum <= OTHER_SHARE + ROUNDING)
    return TRUE;
  g_autofree char *text = fm_number_format (100.0 * sum, 1);
  *reason = g_strdup_printf (_ ("%s %% of it are ingredients that the mixture does not have, above "
                                "all %s."),
                             text, (const char *)g_ptr_array_index (inventory->name, worst));
  return FALSE;
}

static gboolean
check_fixed (const FmMixBlend *blend, const Inventory *inventory, char **reason)
{
  double sum = 0.0, most = 0.0;
  guint worst = 0;
  for (guint i = 0; i < inventory->identity->len; i++) {
    const double base = g_array_index (inventory->base, double, i);
    const double off = fabs (g_array_index (inventory->other, double, i) - base);
    if (!(base > 0.0) || is_member (blend, g_ptr_array_index (inventory->identity, i)))
      continue;
    sum += off;
    if (off > most) {
      most = off;
      worst = i;
    }
  }
  if (sum <= FIXED_SHARE + ROUNDING)
    return TRUE;
  g_autofree char *now =
      fm_number_format (100.0 * g_array_index (inventory->other, double, worst), 1);
  g_autofree char *fixed =
      fm_number_format (100.0 * g_array_index (inventory->base, double, worst), 1);
  *reason = g_strdup_printf (_ ("It has %s %% %s, where the mixture keeps it at %s %%."), now,
                             (const char *)g_ptr_array_index (inventory->name, worst), fixed);
  return FALSE;
}

static double
component_share (const Inventory *inventory, const FmMixComponent *component)
{
  double share = 0.0;
  for (guint m = 0; m < component->members->len; m++)
    share += other_share (inventory, g_ptr_array_index (component->members, m));
  return share;
}

static gboolean
check_group (const Inventory *inventory, const FmMixComponent *component, char **reason)
{
  const double share = component_share (inventory, component);
  for (guint m = 0; share > 0.0 && m < component->members->len; m++) {
    const double part = other_share (inventory, g_ptr_array_index (component->members, m)) / share;
    if (fabs (part - g_array_index (component->ratio, double, m)) <= GROUP_RATIO + ROUNDING)
      continue;
    *reason = g_strdup_printf (_ ("The parts of %s stand in other proportions to each other than "
                                  "in the mixture."),
                               component->name);
    return FALSE;
  }
  return TRUE;
}

static gboolean
find_shares (const FmMixBlend *self, const Inventory *inventory, double *x, char **reason)
{
  double sum = 0.0;
  for (guint c = 0; c < self->components->len; c++) {
    const FmMixComponent *component = g_ptr_array_index (self->components, c);
    if (!check_group (inventory, component, reason))
      return FALSE;
    x[c] = component_share (inventory, component);
    sum += x[c];
  }
  if (!(sum > 0.0)) {
    *reason = g_strdup (_ ("It has none of the components of the mixture."));
    return FALSE;
  }
  for (guint c = 0; c < self->components->len; c++)
    x[c] /= sum;
  return TRUE;
}

gboolean
fm_mix_blend_locate (const FmMixBlend *self, const FmFormula *other, double *x, char **reason)
{
  const double total_g = fm_formula_total_g (other);
  g_autofree char *why = NULL;
  gboolean placed = FALSE;

  if (total_g > 0.0 && isfinite (total_g)) {
    Inventory inventory;
    inventory_init (&inventory, self->base, other);
    placed = check_others (self, &inventory, &why) && check_fixed (self, &inventory, &why) &&
             find_shares (self, &inventory, x, &why);
    inventory_clear (&inventory);
  } else {
    why = g_strdup (_ ("It has no masses."));
  }
  if (reason != NULL)
    *reason = g_steal_pointer (&why);
  return placed;
}

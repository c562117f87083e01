/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map.c - the map as a value: making, copying, comparing */
#include "core/mixture/fm-map.h"

#include "core/base/fm-double.h"

#define DEFAULT_DEGREE 2
#define DEFAULT_TRIALS 10
#define SEED_BITS 53

static guint64
random_seed (void)
{
  const guint64 bits = ((guint64)g_random_int () << 32) | g_random_int ();
  return bits >> (64 - SEED_BITS);
}

FmMap *
fm_map_new (void)
{
  FmMap *self = g_new0 (FmMap, 1);

  self->components = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_mix_component_free);
  for (guint i = 0; i < FM_MIX_BLEND_MAX_COMPONENTS; i++)
    self->upper[i] = 1;
  self->design = FM_MAP_VERTICES;
  self->degree = DEFAULT_DEGREE;
  self->order = FM_MIX_QUADRATIC;
  self->n_trials = DEFAULT_TRIALS;
  self->seed = random_seed ();
  self->points = g_array_new (FALSE, TRUE, sizeof (FmMapPoint));
  return self;
}

static gpointer
component_copy (gconstpointer data, gpointer unused)
{
  return fm_mix_component_copy (data);
}

FmMap *
fm_map_copy (const FmMap *self)
{
  FmMap *copy = g_memdup2 (self, sizeof *self);

  copy->name = g_strdup (self->name);
  copy->components = g_ptr_array_copy (self->components, (GCopyFunc)component_copy, NULL);
  g_ptr_array_set_free_func (copy->components, (GDestroyNotify)fm_mix_component_free);
  copy->points = g_array_copy (self->points);
  return copy;
}

void
fm_map_free (FmMap *self)
{
  if (self == NULL)
    return;
  g_free (self->name);
  g_ptr_array_unref (self->components);
  g_array_unref (self->points);
  g_free (self);
}

static gboolean
same_component (const FmMixComponent *a, const FmMixComponent *b)
{
  if (g_strcmp0 (a->name, b->name) != 0 || a->members->len != b->members->len ||
      a->ratio->len != b->ratio->len)
    return FALSE;
  for (guint i = 0; i < a->members->len; i++)
    if (g_strcmp0 (a->members->pdata[i], b->members->pdata[i]) != 0)
      return FALSE;
  for (guint i = 0; i < a->ratio->len; i++)
    if (!fm_double_same (g_array_index (a->ratio, double, i), g_array_index (b->ratio, double, i)))
      return FALSE;
  return TRUE;
}

static gboolean
same_components (const FmMap *a, const FmMap *b)
{
  if (a->components->len != b->components->len)
    return FALSE;
  for (guint i = 0; i < a->components->len; i++)
    if (!same_component (a->components->pdata[i], b->components->pdata[i]))
      return FALSE;
  return TRUE;
}

/* Only as many as there are components; the rest of the arrays says nothing. */
static gboolean
same_shares (const FmMap *map, const double *a, const double *b)
{
  for (guint i = 0; i < MIN (map->components->len, FM_MIX_BLEND_MAX_COMPONENTS); i++)
    if (!fm_double_same (a[i], b[i]))
      return FALSE;
  return TRUE;
}

static gboolean
same_points (const FmMap *a, const FmMap *b)
{
  if (a->points->len != b->points->len)
    return FALSE;
  for (guint i = 0; i < a->points->len; i++) {
    const FmMapPoint *x = &g_array_index (a->points, FmMapPoint, i);
    const FmMapPoint *y = &g_array_index (b->points, FmMapPoint, i);
    if (x->kind != y->kind || x->version_id != y->version_id || !same_shares (a, x->x, y->x))
      return FALSE;
  }
  return TRUE;
}

gboolean
fm_map_equal (const FmMap *a, const FmMap *b)
{
  return a->id == b->id && a->blend_id == b->blend_id && a->base_version_id == b->base_version_id &&
         a->created_at == b->created_at && a->design == b->design && a->degree == b->degree &&
         a->order == b->order && a->n_trials == b->n_trials && a->seed == b->seed &&
         g_strcmp0 (a->name, b->name) == 0 && same_components (a, b) &&
         same_shares (a, a->lower, b->lower) && same_shares (a, a->upper, b->upper) &&
         same_points (a, b);
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-maps-check.c - do the parts of a map fit each other? */
#include "store/fm-maps-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SEED_LIMIT (G_GUINT64_CONSTANT (1) << 53)
/* What the arithmetic of a design may miss 0 or 1 by. */
#define SHARE_EPSILON 1e-6

static gboolean
refuse (GError **error, const char *text)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED, text);
  return FALSE;
}

static gboolean
check_settings (const FmMap *map, GError **error)
{
  if (map->components->len > FM_MIX_BLEND_MAX_COMPONENTS) {
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                 _ ("A map holds up to %d components. Join some of them to a group."),
                 FM_MIX_BLEND_MAX_COMPONENTS);
    return FALSE;
  }
  if ((int)map->design < FM_MAP_LATTICE || map->design > FM_MAP_OPTIMAL ||
      (int)map->order < FM_MIX_LINEAR || map->order > FM_MIX_SPECIAL_CUBIC)
    return refuse (error, _ ("The map asks for a design or a model that Forcemeat does not know. "
                             "Choose both again."));
  if (map->seed >= SEED_LIMIT)
    return refuse (error, _ ("The seed of the map is too large. Take a smaller number."));
  return TRUE;
}

static gboolean
is_share (double value, double epsilon)
{
  return value >= -epsilon && value <= 1.0 + epsilon;
}

static gboolean
check_component (const FmMap *map, guint index, GHashTable *seen, GError **error)
{
  const FmMixComponent *component = map->components->pdata[index];

  if (!is_share (map->lower[index], 0) || !is_share (map->upper[index], 0)) {
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                 _ ("The least and the largest share of %s must lie between 0 and 100 %%."),
                 component->name != NULL ? component->name : "?");
    return FALSE;
  }
  for (guint i = 0; i < component->members->len; i++) {
    if (!g_hash_table_add (seen, component->members->pdata[i]))
      return refuse (error, _ ("One ingredient is in the map twice. Take it out of one of the "
                               "components."));
  }
  for (guint i = 0; i < component->ratio->len; i++) {
    double ratio = g_array_index (component->ratio, double, i);
    if (!isnan (ratio) && !is_share (ratio, 0))
      return refuse (error, _ ("The proportions within a group must lie between 0 and 100 %."));
  }
  return TRUE;
}

static gboolean
check_point (const FmMap *map, const FmMapPoint *point, GError **error)
{
  if ((int)point->kind < FM_MIX_POINT_VERTEX || point->kind > FM_MIX_POINT_OTHER)
    return refuse (error, _ ("A blend of the map is of an unknown kind. Lay the design again."));
  for (guint i = 0; i < map->components->len; i++) {
    if (!is_share (point->x[i], SHARE_EPSILON))
      return refuse (error, _ ("A blend of the map has a share outside 0 to 100 %. Lay the design "
                               "again."));
  }
  return TRUE;
}

gboolean
fm_maps_check_parts (const FmMap *map, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  if (!check_settings (map, error))
    return FALSE;
  for (guint i = 0; i < map->components->len; i++) {
    if (!check_component (map, i, seen, error))
      return FALSE;
  }
  for (guint i = 0; i < map->points->len; i++) {
    if (!check_point (map, &g_array_index (map->points, FmMapPoint, i), error))
      return FALSE;
  }
  return TRUE;
}

/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-text.c - a map in words */
#include "app/map/fm-map-text.h"

#include <glib/gi18n-lib.h>

#include "core/mixture/fm-map-choice.h"
#include "core/base/fm-number.h"

static const FmMixOrder orders[] = { FM_MIX_LINEAR, FM_MIX_QUADRATIC, FM_MIX_SPECIAL_CUBIC };

static void
add_line (GString *text, const char *line)
{
  if (text->len > 0)
    g_string_append_c (text, '\n');
  g_string_append (text, line);
}

char *
fm_map_text_fixed (const FmMixBlend *blend, const FmFormula *base, const GPtrArray *components)
{
  g_autoptr (GPtrArray) ingredients = fm_map_ingredients_new (base, components);
  GString *text = g_string_new (NULL);

  if (blend != NULL) {
    g_autofree char *share = fm_number_format_unit (100.0 * blend->mixture_share, 1, "%");
    g_autofree char *line =
        g_strdup_printf (_ ("What changes makes up %s of the blend; this stays the same."), share);

    add_line (text, line);
  }
  for (guint i = 0; i < ingredients->len; i++) {
    const FmMapIngredient *ingredient = g_ptr_array_index (ingredients, i);
    g_autofree char *share = fm_number_format_unit (ingredient->share_pct, 1, "%");
    g_autofree char *line = NULL;

    if (ingredient->role != FM_MAP_FIXED)
      continue;
    line = g_strdup_printf (_ ("%s stays at %s of the blend."), ingredient->name, share);
    add_line (text, line);
  }
  return g_string_free (text, FALSE);
}

char *
fm_map_text_limits (const GPtrArray *limits)
{
  GString *text = g_string_new (NULL);

  if (limits->len == 0)
    add_line (text, _ ("The brief of the base version sets no limits."));
  for (guint i = 0; i < limits->len; i++) {
    const FmMapLimit *limit = g_ptr_array_index (limits, i);
    g_autofree char *band = fm_map_limit_text (limit);
    g_autofree char *reason = fm_map_limit_reason (limit);
    g_autofree char *line = reason != NULL ? g_strdup_printf ("%s. %s", band, reason)
                                           : g_strdup_printf (_ ("%s. Kept."), band);

    add_line (text, line);
  }
  return g_string_free (text, FALSE);
}

const char *
fm_map_text_kind (FmMixPointKind kind)
{
  switch (kind) {
  case FM_MIX_POINT_VERTEX:
    return _ ("corner (vertex)");
  case FM_MIX_POINT_EDGE:
    return _ ("middle of an edge");
  case FM_MIX_POINT_FACE:
    return _ ("middle of a side");
  case FM_MIX_POINT_CENTROID:
    return _ ("middle of all (centroid)");
  case FM_MIX_POINT_AXIAL:
    return _ ("half way to a corner");
  case FM_MIX_POINT_OTHER:
    return NULL;
  }
  g_return_val_if_reached (NULL);
}

const char *
fm_map_text_order (FmMixOrder order)
{
  switch (order) {
  case FM_MIX_LINEAR:
    return _ ("the linear model");
  case FM_MIX_QUADRATIC:
    return _ ("the quadratic model");
  case FM_MIX_SPECIAL_CUBIC:
    return _ ("the special cubic model");
  }
  g_return_val_if_reached (NULL);
}

static char *
model_text (const GArray *points, FmMixOrder order, guint q)
{
  const guint n_terms = fm_mix_n_terms (order, q);
  const guint spare = points->len > n_terms ? points->len - n_terms : 0;

  if (!fm_map_design_carries (points, order, q))
    return g_strdup_printf (_ ("Not enough for %s, which has %u terms."), fm_map_text_order (order),
                            n_terms);
  if (spare == 0)
    return g_strdup_printf (_ ("Just enough for %s, with no trial left to judge its error unless "
                               "some are tasted again."),
                            fm_map_text_order (order));
  return g_strdup_printf (ngettext ("Enough for %s, with %u trial left to judge its error.",
                                    "Enough for %s, with %u trials left to judge its error.",
                                    spare),
                          fm_map_text_order (order), spare);
}

char *
fm_map_text_design (const GArray *points, guint q)
{
  GString *text = g_string_new (NULL);
  g_autofree char *count =
      g_strdup_printf (ngettext ("%u blend.", "%u blends.", points->len), points->len);

  add_line (text, count);
  for (guint i = 0; i < G_N_ELEMENTS (orders); i++) {
    g_autofree char *line = NULL;

    if (orders[i] == FM_MIX_SPECIAL_CUBIC && q < 3)
      continue;
    line = model_text (points, orders[i], q);
    add_line (text, line);
  }
  return g_string_free (text, FALSE);
}

static guint
n_made (const FmMap *map)
{
  guint n = 0;

  for (guint i = 0; i < map->points->len; i++)
    n += g_array_index (map->points, FmMapPoint, i).version_id != 0;
  return n;
}

char *
fm_map_text_optimal (const FmMap *map)
{
  const guint n_terms = fm_mix_n_terms (map->order, map->components->len);
  const guint made = n_made (map);
  GString *text = g_string_new (NULL);
  g_autofree char *needs =
      g_strdup_printf (ngettext ("For %s, which has %u term. More trials than terms let its error "
                                 "be judged.",
                                 "For %s, which has %u terms. More trials than terms let its error "
                                 "be judged.",
                                 n_terms),
                       fm_map_text_order (map->order), n_terms);

  add_line (text, needs);
  if (made > 0) {
    g_autofree char *besides =
        g_strdup_printf (ngettext ("The trial that is a version already counts and stays; new ones "
                                   "are chosen to go with it.",
                                   "The %u trials that are versions already count and stay; new "
                                   "ones are chosen to go with them.",
                                   made),
                         made);

    add_line (text, besides);
  }
  return g_string_free (text, FALSE);
}

char *
fm_map_text_outside (const GArray *points, const FmMixRegion *region)
{
  const guint n = fm_map_design_n_outside (points, region);

  if (n == 0)
    return NULL;
  return g_strdup_printf (
      ngettext ("This design keeps to the least shares only: %u of its blends breaks a most share "
                "or a limit of the brief, and is marked.",
                "This design keeps to the least shares only: %u of its blends break a most share "
                "or a limit of the brief, and are marked.",
                n),
      n);
}

char *
fm_map_text_state (const FmMapPoint *point, const FmMapData *data)
{
  const FmMapPlace *place =
      point->version_id != 0 && data != NULL ? fm_map_data_place (data, point->version_id) : NULL;

  if (point->version_id == 0)
    return g_strdup (_ ("Not made"));
  if (place == NULL)
    return g_strdup (_ ("Made into a version"));
  if (place->n_tastings == 0)
    return g_strdup_printf (_ ("Version %d, not tasted yet"), place->number);
  return g_strdup_printf (
      ngettext ("Version %d, tasted once", "Version %d, tasted %u times", place->n_tastings),
      place->number, place->n_tastings);
}

char *
fm_map_text_trials (guint n, guint n_made)
{
  return g_strdup_printf (
      ngettext ("%u trial, %u made into versions", "%u trials, %u made into versions", n), n,
      n_made);
}

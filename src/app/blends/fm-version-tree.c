/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-tree.c - where the nodes and lines of a tree of versions are drawn */
#include "app/blends/fm-version-tree.h"

#define LANE_BIT(lane) (1u << (lane))

#define NO_ROW G_MAXUINT

typedef struct {
  GPtrArray *versions;
  GHashTable *rows;     /* version id -> row + 1 */
  guint *first_child;   /* of each row, NO_ROW = none */
  guint *next_sibling;  /* of each row, NO_ROW = none */
  guint *lane_of_child; /* of each row: the lane its parent reserved for it */
  guint32 taken;
} Layout;

static const FmVersionInfo *
version_at (Layout *layout, guint row)
{
  return g_ptr_array_index (layout->versions, row);
}

static gboolean
find_parent (Layout *layout, guint row, guint *parent_row)
{
  const FmVersionInfo *info = version_at (layout, row);
  gpointer found = g_hash_table_lookup (layout->rows, &info->parent_id);

  if (info->parent_id == 0 || found == NULL || GPOINTER_TO_UINT (found) - 1 >= row)
    return FALSE;
  *parent_row = GPOINTER_TO_UINT (found) - 1;
  return TRUE;
}

static guint
take_lane (Layout *layout)
{
  for (guint lane = 0; lane < FM_VERSION_TREE_MAX_LANES; lane++) {
    if ((layout->taken & LANE_BIT (lane)) == 0) {
      layout->taken |= LANE_BIT (lane);
      return lane;
    }
  }
  return FM_VERSION_TREE_MAX_LANES - 1;
}

/* Gives every child of @row its lane: the first goes straight on, the others fork off. */
static guint32
place_children (Layout *layout, guint row, guint lane)
{
  guint first = layout->first_child[row];
  guint32 forks = 0;

  for (guint child = first; child != NO_ROW; child = layout->next_sibling[child]) {
    layout->lane_of_child[child] = child == first ? lane : take_lane (layout);
    if (child != first)
      forks |= LANE_BIT (layout->lane_of_child[child]);
  }
  return forks;
}

static void
place_row (Layout *layout, guint row, guint32 above, FmVersionTreePlace *place)
{
  guint parent_row;

  place->above = above;
  if (find_parent (layout, row, &parent_row))
    place->lane = layout->lane_of_child[row];
  else
    place->lane = take_lane (layout);
  if (layout->first_child[row] == NO_ROW)
    layout->taken &= ~LANE_BIT (place->lane);
  place->forks = place_children (layout, row, place->lane);
  place->below = layout->taken;
}

/* From the last row up, so that the children of each row end in order. */
static void
link_children (Layout *layout)
{
  for (guint row = layout->versions->len; row-- > 0;) {
    guint parent_row;

    if (!find_parent (layout, row, &parent_row))
      continue;
    layout->next_sibling[row] = layout->first_child[parent_row];
    layout->first_child[parent_row] = row;
  }
}

static guint *
new_rows (guint n)
{
  guint *rows = g_new (guint, n + 1);

  for (guint i = 0; i <= n; i++)
    rows[i] = NO_ROW;
  return rows;
}

GArray *
fm_version_tree_layout (GPtrArray *versions)
{
  g_autoptr (GHashTable) rows = g_hash_table_new (g_int64_hash, g_int64_equal);
  g_autofree guint *first_child = new_rows (versions->len);
  g_autofree guint *next_sibling = new_rows (versions->len);
  g_autofree guint *lane_of_child = new_rows (versions->len);
  GArray *places = g_array_sized_new (FALSE, TRUE, sizeof (FmVersionTreePlace), versions->len);
  Layout layout = {
    .versions = versions,
    .rows = rows,
    .first_child = first_child,
    .next_sibling = next_sibling,
    .lane_of_child = lane_of_child,
  };
  guint32 above = 0;

  for (guint row = 0; row < versions->len; row++) {
    FmVersionInfo *info = g_ptr_array_index (versions, row);

    g_hash_table_insert (rows, &info->id, GUINT_TO_POINTER (row + 1));
  }
  link_children (&layout);
  g_array_set_size (places, versions->len);
  for (guint row = 0; row < versions->len; row++) {
    FmVersionTreePlace *place = &g_array_index (places, FmVersionTreePlace, row);

    place_row (&layout, row, above, place);
    above = place->below;
  }
  return places;
}

guint
fm_version_tree_n_lanes (const GArray *places)
{
  guint n_lanes = 1;

  for (guint i = 0; i < places->len; i++)
    n_lanes = MAX (n_lanes, g_array_index (places, FmVersionTreePlace, i).lane + 1);
  return n_lanes;
}

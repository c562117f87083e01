/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-tree-item.c - a blend, its draft or a version, as a row of a list */
#include "app/blends/fm-version-tree-item.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-date.h"
#include "core/base/fm-number.h"

struct _FmVersionTreeItem {
  GObject parent_instance;

  FmVersionTreeKind kind;
  gint64 blend_id;
  gint64 version_id;
  gint64 parent_id;
  char *title;
  char *folded_title; /* for searching */
  char *detail;
  char *spoken;
  FmVersionTreePlace place;
  guint n_lanes;
  GListStore *children;
};

G_DEFINE_FINAL_TYPE (FmVersionTreeItem, fm_version_tree_item, G_TYPE_OBJECT)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
fm_version_tree_item_finalize (GObject *object)
{
  FmVersionTreeItem *self = FM_VERSION_TREE_ITEM (object);

  g_free (self->title);
  g_free (self->folded_title);
  g_free (self->detail);
  g_free (self->spoken);
  g_clear_object (&self->children);
  G_OBJECT_CLASS (fm_version_tree_item_parent_class)->finalize (object);
}

static void
fm_version_tree_item_class_init (FmVersionTreeItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_version_tree_item_finalize;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_VERSION_TREE_ITEM, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
fm_version_tree_item_init (FmVersionTreeItem *self)
{
  self->n_lanes = 1;
}

FmVersionTreeItem *
fm_version_tree_item_new (FmVersionTreeKind kind, gint64 blend_id, gint64 version_id)
{
  FmVersionTreeItem *self = g_object_new (FM_TYPE_VERSION_TREE_ITEM, NULL);

  self->kind = kind;
  self->blend_id = blend_id;
  self->version_id = version_id;
  if (kind == FM_VERSION_TREE_BLEND)
    self->children = g_list_store_new (FM_TYPE_VERSION_TREE_ITEM);
  return self;
}

/* Takes the texts; tells only of a change, so that unchanged rows are left alone. */
static gboolean
take_texts (FmVersionTreeItem *self, char *title, char *detail, char *spoken)
{
  gboolean same = g_strcmp0 (self->title, title) == 0 && g_strcmp0 (self->detail, detail) == 0 &&
                  g_strcmp0 (self->spoken, spoken) == 0;

  g_free (self->title);
  g_free (self->detail);
  g_free (self->spoken);
  g_free (self->folded_title);
  self->title = title;
  self->detail = detail;
  self->spoken = spoken;
  self->folded_title = g_utf8_casefold (title, -1);
  return !same;
}

static void
set_blend (FmVersionTreeItem *self, const FmBlendInfo *info)
{
  g_autofree char *versions =
      g_strdup_printf (ngettext ("%u version", "%u versions", info->n_versions), info->n_versions);
  char *spoken = g_strdup_printf (_ ("Blend %s, %s"), info->name, versions);

  if (take_texts (self, g_strdup (info->name), g_steal_pointer (&versions), spoken))
    g_signal_emit (self, signals[CHANGED], 0);
}

/* A part breaks only between parts, so "2 experiments" stays on one line. */
static void
append_part (GString *text, char *part)
{
  g_auto (GStrv) words = g_strsplit (part, " ", -1);
  g_autofree char *unbroken = g_strjoinv ("\302\240", words);

  if (text->len > 0)
    g_string_append (text, " · ");
  g_string_append (text, unbroken);
  g_free (part);
}

static char *
version_detail (const FmVersionInfo *info)
{
  GString *text = g_string_new (NULL);

  append_part (text, fm_date_text (info->saved_at));
  if (!isnan (info->fat_pct)) {
    g_autofree char *fat = fm_number_format_unit (info->fat_pct, 1, "%");

    append_part (text, g_strdup_printf (_ ("fat %s"), fat));
  } else {
    append_part (text, g_strdup (_ ("fat unknown")));
  }
  if (info->n_experiments > 0)
    append_part (text,
                 g_strdup_printf (ngettext ("%u experiment", "%u experiments", info->n_experiments),
                                  info->n_experiments));
  if (!isnan (info->mean_rating)) {
    g_autofree char *rating = fm_number_format (info->mean_rating, 1);

    append_part (text, g_strdup_printf (_ ("rated %s of 10"), rating));
  }
  if (info->n_tastings > 0)
    append_part (text,
                 g_strdup_printf (ngettext ("tasted %u time", "tasted %u times", info->n_tastings),
                                  info->n_tastings));
  return g_string_free (text, FALSE);
}

static int
number_of (GPtrArray *versions, gint64 version_id)
{
  for (guint i = 0; i < versions->len; i++) {
    const FmVersionInfo *info = g_ptr_array_index (versions, i);

    if (info->id == version_id)
      return info->number;
  }
  return 0;
}

static char *
origin_text (GPtrArray *versions, gint64 parent_id)
{
  int number = number_of (versions, parent_id);

  return number > 0 ? g_strdup_printf (_ ("from version %d"), number)
                    : g_strdup (_ ("from nothing"));
}

static gboolean
set_version_texts (FmVersionTreeItem *self, const FmVersionInfo *info, GPtrArray *versions)
{
  g_autofree char *origin = origin_text (versions, info->parent_id);
  g_autofree char *detail = version_detail (info);
  char *title = g_strdup_printf ("%d  %s", info->number, info->reason);
  char *spoken =
      g_strdup_printf (_ ("Version %d, %s: %s. %s"), info->number, origin, info->reason, detail);

  return take_texts (self, title, g_steal_pointer (&detail), spoken);
}

static gboolean
set_draft_texts (FmVersionTreeItem *self, const FmBlendInfo *info, GPtrArray *versions)
{
  g_autofree char *origin = origin_text (versions, info->draft_parent_version_id);
  const char *state = info->has_draft_changes ? _ ("changed") : _ ("no changes yet");
  char *detail = g_strdup_printf ("%s · %s", origin, state);

  return take_texts (self, g_strdup (_ ("Draft")), detail,
                     g_strdup_printf (_ ("Draft, %s, %s"), origin, state));
}

static gboolean
set_place (FmVersionTreeItem *self,
           gint64 parent_id,
           const FmVersionTreePlace *place,
           guint n_lanes)
{
  gboolean same = self->place.lane == place->lane && self->place.above == place->above &&
                  self->place.below == place->below && self->place.forks == place->forks &&
                  self->n_lanes == n_lanes && self->parent_id == parent_id;

  self->place = *place;
  self->n_lanes = n_lanes;
  self->parent_id = parent_id;
  return !same;
}

FmVersionTreeKind
fm_version_tree_item_get_kind (FmVersionTreeItem *self)
{
  return self->kind;
}

gint64
fm_version_tree_item_get_blend_id (FmVersionTreeItem *self)
{
  return self->blend_id;
}

gint64
fm_version_tree_item_get_version_id (FmVersionTreeItem *self)
{
  return self->version_id;
}

const char *
fm_version_tree_item_get_title (FmVersionTreeItem *self)
{
  return self->title;
}

const char *
fm_version_tree_item_get_detail (FmVersionTreeItem *self)
{
  return self->detail;
}

const char *
fm_version_tree_item_get_spoken (FmVersionTreeItem *self)
{
  return self->spoken;
}

const FmVersionTreePlace *
fm_version_tree_item_get_place (FmVersionTreeItem *self, guint *n_lanes)
{
  *n_lanes = self->n_lanes;
  return &self->place;
}

GListStore *
fm_version_tree_item_get_children (FmVersionTreeItem *self)
{
  return self->children;
}

gboolean
fm_version_tree_item_matches (FmVersionTreeItem *self, const char *needle)
{
  return strstr (self->folded_title, needle) != NULL;
}

/* The draft is placed as a version after all others, so that its line shows where it came from. */
static GPtrArray *
with_draft (const FmVersionBlend *blend, FmVersionInfo *draft)
{
  GPtrArray *all = g_ptr_array_new ();

  for (guint i = 0; i < blend->versions->len; i++)
    g_ptr_array_add (all, g_ptr_array_index (blend->versions, i));
  draft->id = 0;
  draft->blend_id = blend->id;
  draft->parent_id = blend->info->draft_parent_version_id;
  g_ptr_array_add (all, draft);
  return all;
}

static FmVersionTreeItem *
item_at (GListStore *store, guint position)
{
  FmVersionTreeItem *item = g_list_model_get_item (G_LIST_MODEL (store), position);

  if (item != NULL)
    g_object_unref (item); /* the store keeps it */
  return item;
}

static void
drop_after (GListStore *store, guint position)
{
  guint n_items = g_list_model_get_n_items (G_LIST_MODEL (store));

  if (n_items > position)
    g_list_store_splice (store, position, n_items - position, NULL, 0);
}

/* The item for a key at @position: the one that is there, or a new one in its place. */
static FmVersionTreeItem *
ensure_item (GListStore *store,
             guint position,
             FmVersionTreeKind kind,
             gint64 blend_id,
             gint64 version_id,
             FmVersionTreeItem **fresh)
{
  FmVersionTreeItem *item = item_at (store, position);

  if (item != NULL && item->version_id == version_id)
    return item;
  *fresh = fm_version_tree_item_new (kind, blend_id, version_id);
  return *fresh;
}

static void
put_item (GListStore *store, guint position, FmVersionTreeItem *fresh)
{
  g_list_store_insert (store, position, fresh);
  g_object_unref (fresh);
}

static void
update_children (FmVersionTreeItem *self, const FmVersionBlend *blend)
{
  GListStore *store = self->children;
  FmVersionInfo draft = { 0 };
  g_autoptr (GPtrArray) all = with_draft (blend, &draft);
  g_autoptr (GArray) places = fm_version_tree_layout (all);
  guint n_lanes = fm_version_tree_n_lanes (places);

  for (guint i = 0; i < all->len; i++) {
    const FmVersionInfo *info = g_ptr_array_index (all, i);
    gboolean is_draft = info == &draft;
    FmVersionTreeItem *fresh = NULL;
    FmVersionTreeItem *item =
        ensure_item (store, i, is_draft ? FM_VERSION_TREE_DRAFT : FM_VERSION_TREE_VERSION,
                     blend->id, info->id, &fresh);
    gboolean moved =
        set_place (item, info->parent_id, &g_array_index (places, FmVersionTreePlace, i), n_lanes);
    gboolean retold = is_draft ? set_draft_texts (item, blend->info, blend->versions)
                               : set_version_texts (item, info, blend->versions);

    if (fresh != NULL)
      put_item (store, i, fresh);
    else if (moved || retold)
      g_signal_emit (item, signals[CHANGED], 0);
  }
  drop_after (store, all->len);
}

void
fm_version_tree_item_update (FmVersionTreeItem *self, const FmVersionBlend *blend)
{
  g_return_if_fail (FM_IS_VERSION_TREE_ITEM (self));
  g_return_if_fail (self->kind == FM_VERSION_TREE_BLEND);
  set_blend (self, blend->info);
  update_children (self, blend);
}

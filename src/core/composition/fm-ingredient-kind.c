/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-kind.c - what an ingredient is for in a mix */
#include "core/composition/fm-ingredient.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define NDB_DIGITS 5

static gboolean
has_word (const char *lower_name, const char *const *words)
{
  for (; *words; words++)
    if (strstr (lower_name, *words))
      return TRUE;
  return FALSE;
}

/* Whether the first part of the name, which is the food itself, is a kind of meat. */
static gboolean
is_meat (const char *first_part)
{
  static const char *const meats[] = {
    "beef",  "pork",           "lamb",           "veal",       "game meat", "goat",
    "bison", "chicken",        "turkey",         "duck",       "goose",     "ground turkey",
    "quail", "pheasant",       "beef composite", "guinea hen", "squab",     "ostrich",
    "emu",   "canadian bacon", "turkey bacon",   "bacon",      NULL,
  };
  return g_strv_contains (meats, first_part);
}

/* Separable fat is named by a part of its own: "Pork, fresh, fat, raw". */
static gboolean
is_fat (char **parts)
{
  static const char *const fat_words[] = { "separable fat", "backfat",  "suet",         "tallow",
                                           "leaf fat",      "seam fat", "external fat", NULL };
  if (g_str_has_prefix (parts[0], "lard"))
    return TRUE;
  for (; *parts; parts++)
    if (strcmp (*parts, "fat") == 0 || has_word (*parts, fat_words))
      return TRUE;
  return FALSE;
}

/* Rows of the dataset that are neither meat nor fat and serve a purpose of their own in a mix, from
 * one number to another; reviewed one by one against the names of SR28. Group 02 are spices, herbs
 * and what is used like them. */
typedef struct {
  guint first_ndb;
  guint last_ndb;
  FmIngredientKind kind;
} Listed;

static const Listed listed[] = {
  { 2047, 2047, FM_INGREDIENT_SALT },     /* salt, table */
  { 2001, 2999, FM_INGREDIENT_SPICE },    /* spices and herbs */
  { 19334, 19336, FM_INGREDIENT_SPICE },  /* sugars */
  { 19908, 19908, FM_INGREDIENT_SPICE },  /* sugar, turbinado */
  { 14384, 14385, FM_INGREDIENT_WATER },  /* water, bottled */
  { 14411, 14412, FM_INGREDIENT_WATER },  /* water, tap, drinking and well */
  { 14429, 14429, FM_INGREDIENT_WATER },  /* water, tap, municipal */
  { 14432, 14433, FM_INGREDIENT_WATER },  /* water, bottled */
  { 14437, 14440, FM_INGREDIENT_WATER },  /* water, bottled */
  { 14555, 14555, FM_INGREDIENT_WATER },  /* water, bottled, generic */
  { 14559, 14559, FM_INGREDIENT_WATER },  /* water, bottled */
  { 1090, 1093, FM_INGREDIENT_BINDER },   /* milk, dry */
  { 1133, 1137, FM_INGREDIENT_BINDER },   /* egg, dried */
  { 1154, 1155, FM_INGREDIENT_BINDER },   /* milk, dry, nonfat */
  { 1173, 1173, FM_INGREDIENT_BINDER },   /* egg white, dried */
  { 1212, 1212, FM_INGREDIENT_BINDER },   /* milk, dry, whole */
  { 1258, 1258, FM_INGREDIENT_BINDER },   /* egg white, dried */
  { 11413, 11413, FM_INGREDIENT_BINDER }, /* potato flour */
  { 16115, 16119, FM_INGREDIENT_BINDER }, /* soy flour, soy meal */
  { 16121, 16122, FM_INGREDIENT_BINDER }, /* soy protein */
  { 16420, 16420, FM_INGREDIENT_BINDER }, /* soy protein concentrate */
  { 16422, 16422, FM_INGREDIENT_BINDER }, /* soy protein isolate */
  { 18079, 18079, FM_INGREDIENT_BINDER }, /* bread crumbs, dry, plain */
  { 18224, 18224, FM_INGREDIENT_BINDER }, /* rusk */
  { 18376, 18376, FM_INGREDIENT_BINDER }, /* bread crumbs, dry, seasoned */
  { 19177, 19177, FM_INGREDIENT_BINDER }, /* gelatin, dry powder */
  { 20016, 20019, FM_INGREDIENT_BINDER }, /* corn flour */
  { 20027, 20027, FM_INGREDIENT_BINDER }, /* cornstarch */
  { 20033, 20033, FM_INGREDIENT_BINDER }, /* oat bran, raw */
  { 20038, 20038, FM_INGREDIENT_BINDER }, /* oats */
  { 20061, 20061, FM_INGREDIENT_BINDER }, /* rice flour, white */
  { 20066, 20066, FM_INGREDIENT_BINDER }, /* semolina */
  { 20068, 20068, FM_INGREDIENT_BINDER }, /* tapioca */
  { 20080, 20084, FM_INGREDIENT_BINDER }, /* wheat flour */
  { 20090, 20090, FM_INGREDIENT_BINDER }, /* rice flour, brown */
  { 20129, 20129, FM_INGREDIENT_BINDER }, /* wheat flour, bread */
  { 20315, 20317, FM_INGREDIENT_BINDER }, /* corn flour */
  { 20381, 20381, FM_INGREDIENT_BINDER }, /* wheat flour */
  { 20466, 20466, FM_INGREDIENT_BINDER }, /* semolina */
  { 20481, 20481, FM_INGREDIENT_BINDER }, /* wheat flour */
  { 20581, 20581, FM_INGREDIENT_BINDER }, /* wheat flour */
  { 20623, 20649, FM_INGREDIENT_BINDER }, /* wheat flour, industrial and whole-grain */
  { 48052, 48052, FM_INGREDIENT_BINDER }, /* vital wheat gluten */
};

static FmIngredientKind
listed_kind (const char *ndb_no)
{
  guint64 number = 0;
  if (!ndb_no || strlen (ndb_no) != NDB_DIGITS ||
      !g_ascii_string_to_unsigned (ndb_no, 10, 1, 99999, &number, NULL))
    return FM_INGREDIENT_OTHER;
  for (gsize i = 0; i < G_N_ELEMENTS (listed); i++)
    if (number >= listed[i].first_ndb && number <= listed[i].last_ndb)
      return listed[i].kind;
  return FM_INGREDIENT_OTHER;
}

FmIngredientKind
fm_ingredient_guess_kind (const char *ndb_no, const char *name)
{
  static const char *const cured_words[] = { "bacon", "cured", "corned", "salt pork", NULL };
  static const char *const trim_words[] = { "trimmings", NULL };
  FmIngredientKind by_number = listed_kind (ndb_no);
  if (by_number != FM_INGREDIENT_OTHER)
    return by_number;

  g_autofree char *lower = g_utf8_strdown (name ? name : "", -1);
  g_auto (GStrv) parts = g_strsplit (lower, ", ", -1);
  gboolean meat = parts[0] && is_meat (parts[0]) && !strstr (lower, "meatless");
  if (meat && has_word (lower, cured_words))
    return FM_INGREDIENT_CURED;
  if (parts[0] && is_fat (parts))
    return FM_INGREDIENT_FAT;
  if (!meat)
    return FM_INGREDIENT_OTHER;
  return has_word (lower, trim_words) ? FM_INGREDIENT_TRIM : FM_INGREDIENT_CUT;
}

gboolean
fm_ingredient_kind_keeps_share (FmIngredientKind kind)
{
  return kind == FM_INGREDIENT_SALT || kind == FM_INGREDIENT_SPICE || kind == FM_INGREDIENT_WATER ||
         kind == FM_INGREDIENT_BINDER;
}

const char *
fm_ingredient_kind_name (FmIngredientKind kind)
{
  switch (kind) {
  case FM_INGREDIENT_CUT:
    return _ ("Cut");
  case FM_INGREDIENT_TRIM:
    return _ ("Trim");
  case FM_INGREDIENT_FAT:
    return _ ("Fat");
  case FM_INGREDIENT_CURED:
    return _ ("Cured meat");
  case FM_INGREDIENT_SALT:
    return _ ("Salt");
  case FM_INGREDIENT_SPICE:
    return _ ("Spice or seasoning");
  case FM_INGREDIENT_WATER:
    return _ ("Water or ice");
  case FM_INGREDIENT_BINDER:
    return _ ("Binder or extender");
  case FM_INGREDIENT_OTHER:
    return _ ("Other");
  }
  g_return_val_if_reached (NULL);
}

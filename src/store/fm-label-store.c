/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-store.c - what was chosen and stated for the label of a blend, kept in the notebook */
#include "store/fm-label-store.h"

#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

#include "store/fm-versions.h"

#define MAX_PACK_G 1e7
/* mg and IU too. */
#define MAX_PER_100G 1e6
#define MAX_QUALITY 1.5
#define MAX_GATHER_PCT 2.0

char *
fm_label_store_key (gint64 blend_id)
{
  return g_strdup_printf ("label-%" G_GINT64_FORMAT, blend_id);
}

char *
fm_label_store_serving_key (gint64 blend_id)
{
  return g_strdup_printf ("label-serving-%" G_GINT64_FORMAT, blend_id);
}

static void
add_number (JsonBuilder *builder, const char *key, double value)
{
  if (isnan (value))
    return;
  json_builder_set_member_name (builder, key);
  json_builder_add_double_value (builder, value);
}

static void
add_text (JsonBuilder *builder, const char *key, const char *text)
{
  if (text == NULL)
    return;
  json_builder_set_member_name (builder, key);
  json_builder_add_string_value (builder, text);
}

static void
add_words (JsonBuilder *builder, GHashTable *words)
{
  g_autoptr (GList) keys =
      g_list_sort (g_hash_table_get_keys (words), (GCompareFunc)(void (*) (void))strcmp);

  json_builder_set_member_name (builder, "words");
  json_builder_begin_object (builder);
  for (GList *l = keys; l != NULL; l = l->next) {
    const FmLabelWords *own = g_hash_table_lookup (words, l->data);

    json_builder_set_member_name (builder, l->data);
    json_builder_begin_object (builder);
    add_text (builder, "name", own->name);
    add_text (builder, "parts", own->parts);
    json_builder_end_object (builder);
  }
  json_builder_end_object (builder);
}

char *
fm_label_choice_to_json (const FmLabelChoice *choice)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autoptr (JsonNode) root = NULL;

  json_builder_begin_object (builder);
  add_text (builder, "rules", fm_label_sets[choice->input.set].key);
  add_number (builder, "serving_g", choice->input.serving_g);
  add_number (builder, "pack_g", choice->input.pack_g);
  json_builder_set_member_name (builder, "with_more");
  json_builder_add_boolean_value (builder, choice->input.with_more);
  add_number (builder, "gather_pct", choice->gather_pct);
  json_builder_set_member_name (builder, "stated_per_100g");
  json_builder_begin_object (builder);
  for (int i = 0; i < FM_N_LABEL_ITEMS; i++)
    add_number (builder, fm_label_item_keys[i], choice->stated.per_100g[i]);
  json_builder_end_object (builder);
  add_number (builder, "protein_quality", choice->stated.protein_quality);
  add_text (builder, "stated_source", choice->stated_source);
  add_words (builder, choice->words);
  json_builder_end_object (builder);
  root = json_builder_get_root (builder);
  return json_to_string (root, FALSE);
}

static double
read_number (JsonObject *object, const char *key, double min, double max, double fallback)
{
  const double value = json_object_get_double_member_with_default (object, key, fallback);

  return value >= min && value <= max ? value : fallback;
}

static const char *
read_text (JsonObject *object, const char *key)
{
  return json_object_get_string_member_with_default (object, key, NULL);
}

static void
read_set (FmLabelChoice *choice, const char *key)
{
  for (guint i = 0; i < FM_N_LABEL_SETS; i++)
    if (g_strcmp0 (fm_label_sets[i].key, key) == 0)
      choice->input.set = (FmLabelSetId)i;
}

static void
read_words (FmLabelChoice *choice, JsonObject *words)
{
  JsonObjectIter iter;
  const char *identity;
  JsonNode *node;

  json_object_iter_init (&iter, words);
  while (json_object_iter_next (&iter, &identity, &node))
    if (JSON_NODE_HOLDS_OBJECT (node)) {
      JsonObject *own = json_node_get_object (node);

      fm_label_choice_set_words (choice, identity, read_text (own, "name"),
                                 read_text (own, "parts"));
    }
}

static void
read_object (FmLabelChoice *choice, JsonObject *object)
{
  JsonNode *words = json_object_get_member (object, "words");
  JsonNode *per_100g = json_object_get_member (object, "stated_per_100g");
  FmLabelStated *stated = &choice->stated;

  read_set (choice, read_text (object, "rules"));
  choice->input.serving_g =
      read_number (object, "serving_g", 1e-3, FM_MAX_PATTY_MASS_G, choice->input.serving_g);
  choice->input.pack_g = read_number (object, "pack_g", 1e-3, MAX_PACK_G, choice->input.pack_g);
  choice->input.with_more =
      json_object_get_boolean_member_with_default (object, "with_more", FALSE);
  choice->gather_pct = read_number (object, "gather_pct", 0.0, MAX_GATHER_PCT, choice->gather_pct);
  if (per_100g != NULL && JSON_NODE_HOLDS_OBJECT (per_100g))
    for (int i = 0; i < FM_N_LABEL_ITEMS; i++)
      stated->per_100g[i] = read_number (json_node_get_object (per_100g), fm_label_item_keys[i],
                                         0.0, MAX_PER_100G, stated->per_100g[i]);
  stated->protein_quality =
      read_number (object, "protein_quality", 0.0, MAX_QUALITY, stated->protein_quality);
  g_free (choice->stated_source);
  choice->stated_source = g_strdup (read_text (object, "stated_source"));
  if (words != NULL && JSON_NODE_HOLDS_OBJECT (words))
    read_words (choice, json_node_get_object (words));
}

void
fm_label_choice_read_json (FmLabelChoice *choice, const char *text)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonNode *root;

  if (text == NULL || !json_parser_load_from_data (parser, text, -1, NULL))
    return;
  root = json_parser_get_root (parser);
  if (root != NULL && JSON_NODE_HOLDS_OBJECT (root))
    read_object (choice, json_node_get_object (root));
}

void
fm_label_store_read (FmNotebook *notebook, const char *key, FmLabelChoice *choice)
{
  g_autofree char *text = fm_notebook_get_setting (notebook, key);

  fm_label_choice_read_json (choice, text);
}

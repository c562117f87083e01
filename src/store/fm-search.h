/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-search.h - one search over all that a notebook holds
 *
 * Words are found by their beginnings, in any order and whatever their case; all words that are
 * typed are wanted. Errors are FM_STORE_ERROR.
 */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** In the order in which they are shown. */
typedef enum {
  FM_FOUND_BLEND,   /* by name */
  FM_FOUND_DRAFT,   /* by ingredient and by the notes of the brief */
  FM_FOUND_VERSION, /* by reason, ingredient, notes of the brief and surface of its experiments */
  FM_FOUND_EXPERIMENT, /* by title, notes and surface */
  FM_FOUND_PHOTO,      /* by caption */
  FM_FOUND_TASTING,    /* by title, notes and remarks */
  FM_FOUND_OWN_ENTRY,  /* by name */
  FM_N_FOUND,
} FmFoundKind;

/**
 * FmFound: one place where all words stand.
 *
 * @id: of the blend, version, experiment, photo or tasting; of a draft its blend; 0 of an own entry
 * @blend_id: 0 where no blend belongs to it
 * @version_id: 0 of a draft and where there is none
 * @experiment_id: of an experiment or a photo, else 0
 * @at: when an experiment was made or a tasting held, unix seconds; 0 of others
 * @blend_name: (nullable)
 * @title: (nullable) its own name; the reason of a version, the caption of a photo
 * @text: (nullable) where the words stand when that is not @title
 */
typedef struct {
  FmFoundKind kind;
  gint64 id;
  gint64 blend_id;
  gint64 version_id;
  gint64 experiment_id;
  int version_number;
  gint64 at;
  char *blend_name;
  char *title;
  char *text;
} FmFound;

/** What was found, kind after kind (element-type FmFound), and of which kinds there is more. */
typedef struct {
  GPtrArray *found;
  gboolean is_cut[FM_N_FOUND];
} FmSearchResult;

/**
 * fm_search:
 * @text: without a word it finds nothing
 * @n_max: of each kind
 *
 * The newest come first within a kind, blends and own entries by name. Nothing that is found in a
 * sealed tasting says which sample it is about. Returns: (transfer full).
 */
FmSearchResult *fm_search (
    FmNotebook *self, const char *text, guint n_max, GCancellable *cancellable, GError **error);
/** The words of a text that was typed, at most @n_max: letters and digits make words, anything else
 * parts them. @text: (nullable). Returns: (transfer full). */
GStrv fm_search_words (const char *text, guint n_max);
void fm_search_result_free (FmSearchResult *result);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmSearchResult, fm_search_result_free)

G_END_DECLS

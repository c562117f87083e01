/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-find.h - what a text finds among the foods of the dataset and the own entries */
#pragma once

#include "app/session/fm-store-task.h"
#include "core/composition/fm-ingredient.h"
#include "store/fm-food-store.h"

G_BEGIN_DECLS

typedef struct {
  char *text;
  GPtrArray *own;      /* (nullable) (element-type FmIngredient) */
  GPtrArray *hits;     /* (element-type FmFoodHit); NULL when the dataset is missing */
  char *read_as;       /* the words searched for; NULL: as typed */
  GError *foods_error; /* why it is missing */
} FmFoodFound;

/** Searches in a thread; without the dataset own entries are found all the same.
 * fm_store_task_finish() in @done gives an FmFoodFound (transfer full). */
void fm_food_find (gpointer owner,
                   FmNotebook *notebook,
                   const char *text,
                   GCancellable *cancellable,
                   GAsyncReadyCallback done);
/** Reads the food of @hit in a thread. fm_store_task_finish() in @done gives the FmIngredient
 * (transfer full), with the short name that the notebook has for it. */
void
fm_food_load (gpointer owner, FmNotebook *notebook, const FmFoodHit *hit, GAsyncReadyCallback done);
/** @self: (nullable), as in the next ones. */
void fm_food_found_free (FmFoodFound *self);
guint fm_food_found_n_own (const FmFoodFound *self);
guint fm_food_found_n_hits (const FmFoodFound *self);
/** Hits that are not ready-made; the ready-made stand behind them. */
guint fm_food_found_n_fresh (const FmFoodFound *self);
/** How many were found, and which words were searched for where they are not those typed.
 * (transfer full) */
char *fm_food_found_text (const FmFoodFound *self);

G_END_DECLS

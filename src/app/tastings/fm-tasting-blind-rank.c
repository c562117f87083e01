/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-blind-rank.c - a taster at the desk puts the cups in order, best first */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/tastings/fm-tasting-blind-pages.h"
#include "app/session/fm-clock.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

#define CUP_CODE "fm-cup-code"

typedef struct {
  FmTastingDocument *document;
  guint taster;
  GtkWidget *question;
  GtkWidget *cups;   /* a button for each cup without a place */
  GtkWidget *shared; /* the next cup shares the place of the one before */
  GtkWidget *order;  /* what has a place, in words */
  GtkWidget *again_button;
} Ranking;

static void show_ranking (Ranking *self);

static void
ranking_free (Ranking *self)
{
  g_object_unref (self->document);
  g_free (self);
}

static GPtrArray *
get_cups (const Ranking *self)
{
  return fm_tasting_cups (fm_tasting_document_get_tasting (self->document), self->taster,
                          FM_TASTING_ROUND_MAIN);
}

static guint
get_code (const GPtrArray *cups, guint index)
{
  return ((const FmTastingCup *)g_ptr_array_index (cups, index))->code;
}

static double
get_place (const Ranking *self, guint code)
{
  return fm_tasting_mark (fm_tasting_document_get_tasting (self->document), self->taster, code,
                          FM_TASTING_RANK, 0);
}

static void
set_place (const Ranking *self, guint code, double place)
{
  fm_tasting_set_mark (fm_tasting_document_get_tasting (self->document), fm_clock_now_s (),
                       self->taster, code, FM_TASTING_RANK, 0, place, NULL);
}

/* How many cups have a place, and the last place given (0 = none). */
static guint
count_placed (const Ranking *self, double *last_place)
{
  g_autoptr (GPtrArray) cups = get_cups (self);
  guint n_placed = 0;

  *last_place = 0.0;
  for (guint i = 0; i < cups->len; i++) {
    const double place = get_place (self, get_code (cups, i));

    n_placed += !isnan (place);
    *last_place = isnan (place) ? *last_place : MAX (*last_place, place);
  }
  return n_placed;
}

static void
cup_clicked_cb (Ranking *self, GtkWidget *button)
{
  const guint code = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), CUP_CODE));
  const gboolean shared = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->shared));
  double last_place;
  const guint n_placed = count_placed (self, &last_place);

  set_place (self, code, shared && n_placed > 0 ? last_place : n_placed + 1.0);
  fm_tasting_document_touch (self->document);
  show_ranking (self);
}

static void
again_clicked_cb (Ranking *self)
{
  g_autoptr (GPtrArray) cups = get_cups (self);

  for (guint i = 0; i < cups->len; i++)
    set_place (self, get_code (cups, i), NAN);
  fm_tasting_document_touch (self->document);
  show_ranking (self);
}

static int
compare_places (gconstpointer a, gconstpointer b, gpointer self)
{
  const FmTastingCup *const *left = a;
  const FmTastingCup *const *right = b;
  const double first = get_place (self, (*left)->code);
  const double second = get_place (self, (*right)->code);

  return (first > second) - (first < second);
}

static void
show_order (Ranking *self)
{
  g_autoptr (GPtrArray) cups = get_cups (self);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = cups->len; i > 0; i--)
    if (isnan (get_place (self, get_code (cups, i - 1))))
      g_ptr_array_remove_index (cups, i - 1);
  g_ptr_array_sort_with_data (cups, compare_places, self);
  for (guint i = 0; i < cups->len; i++) {
    g_autofree char *place = fm_number_to_edit (get_place (self, get_code (cups, i)), 1);

    g_string_append_printf (text, "%s", i > 0 ? "\n" : "");
    /* Translators: place in the order, code on a cup */
    g_string_append_printf (text, _ ("Place %s: %u"), place, get_code (cups, i));
  }
  gtk_label_set_text (GTK_LABEL (self->order), text->str);
}

static void
add_cup_button (Ranking *self, guint code)
{
  g_autofree char *text = g_strdup_printf ("%u", code);
  GtkWidget *button = gtk_button_new_with_label (text);

  g_object_set_data (G_OBJECT (button), CUP_CODE, GUINT_TO_POINTER (code));
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (cup_clicked_cb), self);
  gtk_box_append (GTK_BOX (self->cups), button);
}

static void
show_question (Ranking *self, guint n_placed, guint n_cups)
{
  const char *text = _ ("All samples have a place.");

  if (n_placed == 0)
    text = _ ("Press the sample you like best.");
  else if (n_placed < n_cups)
    text = _ ("Press the next best sample.");
  gtk_label_set_text (GTK_LABEL (self->question), text);
}

static void
show_ranking (Ranking *self)
{
  g_autoptr (GPtrArray) cups = get_cups (self);
  double last_place;
  const guint n_placed = count_placed (self, &last_place);

  fm_widget_clear_box (GTK_BOX (self->cups));
  for (guint i = 0; i < cups->len; i++)
    if (isnan (get_place (self, get_code (cups, i))))
      add_cup_button (self, get_code (cups, i));
  show_question (self, n_placed, cups->len);
  show_order (self);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->shared), FALSE);
  gtk_widget_set_sensitive (self->shared, n_placed > 0 && n_placed < cups->len);
  gtk_widget_set_sensitive (self->again_button, n_placed > 0);
  gtk_widget_child_focus (n_placed < cups->len ? self->cups : self->again_button,
                          GTK_DIR_TAB_FORWARD);
}

GtkWidget *
fm_tasting_blind_rank_new (FmTastingDocument *document, guint taster)
{
  GtkWidget *page = fm_tasting_blind_page_new (_ ("Put the samples in order"));
  Ranking *self = g_new0 (Ranking, 1);

  self->document = g_object_ref (document);
  self->taster = taster;
  self->question = fm_tasting_blind_label_new (NULL, "heading");
  self->cups = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->shared = gtk_check_button_new_with_label (_ ("It shares the place of the sample before"));
  self->order = fm_tasting_blind_label_new (NULL, NULL);
  self->again_button = gtk_button_new_with_label (_ ("Order Again from the Start"));
  gtk_widget_set_halign (self->again_button, GTK_ALIGN_START);
  g_signal_connect_swapped (self->again_button, "clicked", G_CALLBACK (again_clicked_cb), self);
  gtk_box_append (GTK_BOX (page), self->question);
  gtk_box_append (GTK_BOX (page), self->shared);
  gtk_box_append (GTK_BOX (page), self->cups);
  gtk_box_append (GTK_BOX (page), self->order);
  gtk_box_append (GTK_BOX (page), self->again_button);
  g_object_set_data_full (G_OBJECT (page), "fm-ranking", self, (GDestroyNotify)ranking_free);
  show_ranking (self);
  return page;
}

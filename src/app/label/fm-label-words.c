/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-words.c - how an ingredient is called on labels, and what it is made of */
#include "app/label/fm-label-words.h"

#include <glib/gi18n-lib.h>

struct _FmLabelWordsRow {
  AdwExpanderRow parent_instance;

  GtkWidget *name_row;
  GtkWidget *parts_row;
  char *identity;
};

G_DEFINE_FINAL_TYPE (FmLabelWordsRow, fm_label_words_row, ADW_TYPE_EXPANDER_ROW)

static guint changed_signal;

static void
edited_cb (FmLabelWordsRow *self)
{
  g_signal_emit (self, changed_signal, 0);
}

static void
fm_label_words_row_finalize (GObject *object)
{
  g_free (FM_LABEL_WORDS_ROW (object)->identity);
  G_OBJECT_CLASS (fm_label_words_row_parent_class)->finalize (object);
}

static void
fm_label_words_row_class_init (FmLabelWordsRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_label_words_row_finalize;
  changed_signal = g_signal_new ("changed", FM_TYPE_LABEL_WORDS_ROW, G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
add_entry (FmLabelWordsRow *self, const char *title)
{
  GtkWidget *row = adw_entry_row_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_expander_row_add_row (ADW_EXPANDER_ROW (self), row);
  return row;
}

static void
fm_label_words_row_init (FmLabelWordsRow *self)
{
  self->name_row = add_entry (self, _ ("Name on the label"));
  self->parts_row = add_entry (self, _ ("Made of, in descending order"));
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self), FALSE);
}

GtkWidget *
fm_label_words_row_new (const FmIngredient *ingredient, const FmLabelWords *words)
{
  FmLabelWordsRow *self = g_object_new (FM_TYPE_LABEL_WORDS_ROW, NULL);
  const char *own = fm_ingredient_list_word (ingredient);
  g_autofree char *subtitle = g_strdup_printf (_ ("On the label: %s"), own);

  self->identity = g_strdup (fm_ingredient_identity (ingredient));
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), ingredient->name);
  adw_expander_row_set_subtitle (ADW_EXPANDER_ROW (self), subtitle);
  gtk_editable_set_text (GTK_EDITABLE (self->name_row), words->name != NULL ? words->name : "");
  gtk_editable_set_text (GTK_EDITABLE (self->parts_row), words->parts != NULL ? words->parts : "");
  g_signal_connect_swapped (self->name_row, "changed", G_CALLBACK (edited_cb), self);
  g_signal_connect_swapped (self->parts_row, "changed", G_CALLBACK (edited_cb), self);
  return GTK_WIDGET (self);
}

const char *
fm_label_words_row_get_identity (FmLabelWordsRow *self)
{
  return self->identity;
}

const char *
fm_label_words_row_get_name (FmLabelWordsRow *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->name_row));
}

const char *
fm_label_words_row_get_parts (FmLabelWordsRow *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->parts_row));
}

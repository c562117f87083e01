/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-blind-pages.c - what a taster at the desk is asked, one page at a time */
#include "app/tastings/fm-tasting-blind-pages.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-clock.h"

#define LIKING_MARKS 9
#define JAR_MARKS 5
#define SCALE_BUTTONS "fm-scale-buttons"

/* One possible answer. */
typedef struct {
  FmTastingDocument *document;
  guint taster;
  guint code;
  FmTastingTask task;
  guint attribute;
  double value;
} Answer;

static void
answer_free (gpointer data, GClosure *closure)
{
  Answer *answer = data;

  g_object_unref (answer->document);
  g_free (answer);
}

static Answer *
answer_new (const Answer *like, double value)
{
  Answer *answer = g_new (Answer, 1);

  *answer = *like;
  answer->document = g_object_ref (like->document);
  answer->value = value;
  return answer;
}

static double
get_mark (const Answer *like)
{
  return fm_tasting_mark (fm_tasting_document_get_tasting (like->document), like->taster,
                          like->code, like->task, like->attribute);
}

static void
set_mark (const Answer *answer, double value)
{
  fm_tasting_set_mark (fm_tasting_document_get_tasting (answer->document), fm_clock_now_s (),
                       answer->taster, answer->code, answer->task, answer->attribute, value, NULL);
  fm_tasting_document_touch (answer->document);
}

static void
answer_toggled_cb (GtkCheckButton *button, Answer *answer)
{
  if (gtk_check_button_get_active (button))
    set_mark (answer, answer->value);
}

static void
remark_changed_cb (GtkEditable *entry, Answer *answer)
{
  fm_tasting_set_remark (fm_tasting_document_get_tasting (answer->document), fm_clock_now_s (),
                         answer->taster, answer->code, gtk_editable_get_text (entry));
  fm_tasting_document_touch (answer->document);
}

GtkWidget *
fm_tasting_blind_label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

GtkWidget *
fm_tasting_blind_page_new (const char *heading)
{
  GtkWidget *page = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (heading, "title-1"));
  return page;
}

/* @spoken: the question, so that each answer can be told apart by ear. */
static GtkCheckButton *
add_answer (GtkWidget *page,
            GtkCheckButton *group,
            const Answer *like,
            double value,
            const char *text,
            const char *spoken)
{
  GtkWidget *button = gtk_check_button_new_with_label (text);
  /* Translators: what is asked, a possible answer */
  g_autofree char *name = g_strdup_printf (_ ("%s: %s"), spoken, text);

  gtk_check_button_set_group (GTK_CHECK_BUTTON (button), group);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (button), get_mark (like) == value);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_data (button, "toggled", G_CALLBACK (answer_toggled_cb),
                         answer_new (like, value), answer_free, 0);
  gtk_box_append (GTK_BOX (page), button);
  return GTK_CHECK_BUTTON (button);
}

/* Best on top. Returns: (transfer full): the buttons, 1 first. */
static GPtrArray *
add_scale (GtkWidget *page,
           const Answer *like,
           guint n_marks,
           const char *(*get_word) (guint mark),
           const char *question)
{
  GPtrArray *buttons = g_ptr_array_new ();
  GtkCheckButton *group = NULL;

  gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (question, "heading"));
  for (guint mark = n_marks; mark >= 1; mark--) {
    g_autofree char *text = g_strdup_printf ("%u  %s", mark, get_word (mark));

    group = add_answer (page, group, like, mark, text, question);
    g_ptr_array_insert (buttons, 0, group);
  }
  return buttons;
}

static gboolean
digit_pressed_cb (
    GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, GtkWidget *page)
{
  GPtrArray *buttons = g_object_get_data (G_OBJECT (page), SCALE_BUTTONS);
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (page));
  const gunichar digit = gdk_keyval_to_unicode (key);

  if (digit < '1' || digit > '9' || digit - '1' >= buttons->len || GTK_IS_TEXT (focus))
    return FALSE;
  gtk_check_button_set_active (g_ptr_array_index (buttons, digit - '1'), TRUE);
  gtk_widget_grab_focus (g_ptr_array_index (buttons, digit - '1'));
  return TRUE;
}

static void
add_liking (GtkWidget *page, Answer *like)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  like->task = FM_TASTING_LIKING;
  g_object_set_data_full (
      G_OBJECT (page), SCALE_BUTTONS,
      add_scale (page, like, LIKING_MARKS, fm_tasting_liking_word, _ ("How much do you like it?")),
      (GDestroyNotify)g_ptr_array_unref);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (digit_pressed_cb), page);
  gtk_widget_add_controller (page, keys);
}

static void
add_attributes (GtkWidget *page, Answer *like, const GPtrArray *attributes)
{
  like->task = FM_TASTING_JAR;
  for (guint i = 0; i < attributes->len; i++) {
    /* Translators: what is judged, e.g. "salt" */
    g_autofree char *question =
        g_strdup_printf (_ ("How is this: %s?"), (const char *)g_ptr_array_index (attributes, i));

    like->attribute = i;
    g_ptr_array_unref (add_scale (page, like, JAR_MARKS, fm_tasting_jar_word, question));
  }
  like->attribute = 0;
}

static void
add_remark (GtkWidget *page, const Answer *like)
{
  const FmTasting *tasting = fm_tasting_document_get_tasting (like->document);
  const char *text = fm_tasting_remark (tasting, like->taster, like->code);
  g_autofree char *name = g_strdup_printf (_ ("Remark on %u"), like->code);
  GtkWidget *entry = gtk_entry_new ();

  gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (_ ("Remarks"), "heading"));
  gtk_editable_set_text (GTK_EDITABLE (entry), text != NULL ? text : "");
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_data (entry, "changed", G_CALLBACK (remark_changed_cb), answer_new (like, NAN),
                         answer_free, 0);
  gtk_box_append (GTK_BOX (page), entry);
}

GtkWidget *
fm_tasting_blind_cup_new (FmTastingDocument *document, guint taster, guint code)
{
  const FmTasting *tasting = fm_tasting_document_get_tasting (document);
  /* Translators: code on a cup */
  g_autofree char *heading = g_strdup_printf (_ ("Taste sample %u"), code);
  GtkWidget *page = fm_tasting_blind_page_new (heading);
  Answer like = { .document = document, .taster = taster, .code = code };

  if ((tasting->tasks & FM_TASTING_LIKING) != 0)
    add_liking (page, &like);
  if ((tasting->tasks & FM_TASTING_JAR) != 0)
    add_attributes (page, &like, tasting->attributes);
  if ((tasting->tasks & FM_TASTING_REMARKS) != 0)
    add_remark (page, &like);
  return page;
}

GtkWidget *
fm_tasting_blind_choice_new (FmTastingDocument *document, guint taster, FmTastingTask task)
{
  const FmTasting *tasting = fm_tasting_document_get_tasting (document);
  const gboolean pair = task == FM_TASTING_PREFERENCE;
  const char *question = pair ? _ ("Which do you prefer?") : _ ("Which is the odd one?");
  GtkWidget *page = fm_tasting_blind_page_new (question);
  Answer like = { .document = document, .taster = taster, .task = task };
  GtkCheckButton *group = NULL;
  g_autoptr (GPtrArray) cups =
      fm_tasting_cups (tasting, taster, pair ? FM_TASTING_ROUND_PAIR : FM_TASTING_ROUND_TRIANGLE);

  gtk_box_append (GTK_BOX (page),
                  fm_tasting_blind_label_new (
                      pair ? _ ("Taste these two in this order.")
                           : _ ("Taste these three in this order. Two are the same. Guess if you "
                                "must."),
                      NULL));
  for (guint i = 0; i < cups->len; i++) {
    g_autofree char *text = NULL;

    like.code = ((const FmTastingCup *)g_ptr_array_index (cups, i))->code;
    text = g_strdup_printf ("%u", like.code);
    group = add_answer (page, group, &like, 1.0, text, question);
  }
  return page;
}

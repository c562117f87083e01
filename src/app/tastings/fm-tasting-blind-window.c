/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-blind-window.c - the whole screen for a taster at the desk: codes only */
#include "app/tastings/fm-tasting-blind-window.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/session/fm-clock.h"
#include "app/tastings/fm-tasting-blind-pages.h"
#include "app/tastings/fm-tasting-cautions.h"
#include "app/tastings/fm-tasting-cover.h"
#include "app/tastings/fm-tasting-reason.h"
#include "app/widgets/fm-widget.h"

#define TASTER "fm-taster"

typedef enum {
  STEP_CUP,
  STEP_RANK,
  STEP_PAIR,
  STEP_TRIANGLE,
  STEP_END,
} StepKind;

typedef struct {
  StepKind kind;
  guint code;
} Step;

struct _FmTastingBlindWindow {
  GtkWindow parent_instance;

  AdwClamp *clamp;
  GtkScrolledWindow *scroller;
  GtkLabel *failure_label;
  GtkLabel *step_label;
  GtkWidget *end_button;
  GtkWidget *back_button;
  GtkButton *next_button;

  FmTastingDocument *document;
  GPtrArray *hidden; /* GtkWindow */
  char *tally;       /* what tasters are told of core readings and allergens, naming no sample */
  GtkWidget *reason; /* (nullable) entry for the reason to go on, while the record is shown */
  GArray *steps;     /* Step; empty while it is asked who tastes */
  guint step;
  guint taster;
};

G_DEFINE_FINAL_TYPE (FmTastingBlindWindow, fm_tasting_blind_window, GTK_TYPE_WINDOW)

static void ask_who (FmTastingBlindWindow *self, const char *thanks);

static FmTasting *
get_tasting (FmTastingBlindWindow *self)
{
  return fm_tasting_document_get_tasting (self->document);
}

static const FmTaster *
get_taster (FmTastingBlindWindow *self, guint index)
{
  return g_ptr_array_index (get_tasting (self)->tasters, index);
}

static void
put_page (FmTastingBlindWindow *self, GtkWidget *page)
{
  adw_clamp_set_child (self->clamp, page);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0.0);
  if (gtk_widget_child_focus (page, GTK_DIR_TAB_FORWARD))
    return;
  /* A focus on what is not shown would swallow every key. */
  gtk_widget_grab_focus (gtk_widget_get_visible (GTK_WIDGET (self->next_button))
                             ? GTK_WIDGET (self->next_button)
                             : self->end_button);
}

static void
add_step (FmTastingBlindWindow *self, StepKind kind, guint code)
{
  const Step step = { kind, code };

  g_array_append_val (self->steps, step);
}

static void
list_steps (FmTastingBlindWindow *self)
{
  const guint tasks = get_tasting (self)->tasks;
  g_autoptr (GPtrArray) cups =
      fm_tasting_cups (get_tasting (self), self->taster, FM_TASTING_ROUND_MAIN);

  g_array_set_size (self->steps, 0);
  for (guint i = 0; i < cups->len; i++)
    add_step (self, STEP_CUP, ((const FmTastingCup *)g_ptr_array_index (cups, i))->code);
  if ((tasks & FM_TASTING_RANK) != 0)
    add_step (self, STEP_RANK, 0);
  if ((tasks & FM_TASTING_PREFERENCE) != 0)
    add_step (self, STEP_PAIR, 0);
  if ((tasks & FM_TASTING_TRIANGLE) != 0)
    add_step (self, STEP_TRIANGLE, 0);
  add_step (self, STEP_END, 0);
}

static GtkWidget *
new_end_page (FmTastingBlindWindow *self)
{
  GtkWidget *page = fm_tasting_blind_page_new (_ ("Hand in your sheet"));
  g_autofree char *gaps = fm_tasting_sheet_gaps (get_tasting (self), self->taster);
  g_autofree char *text = gaps != NULL ? g_strdup_printf (_ ("Not filled in yet: %s."), gaps)
                                       : g_strdup (_ ("All questions are answered."));

  gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (text, NULL));
  if (gaps != NULL)
    gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (
                                        _ ("Go back to fill it in, or hand in as it is."), NULL));
  gtk_button_set_label (self->next_button, _ ("Hand In"));
  return page;
}

static GtkWidget *
new_page (FmTastingBlindWindow *self, const Step *step)
{
  switch (step->kind) {
  case STEP_CUP:
    return fm_tasting_blind_cup_new (self->document, self->taster, step->code);
  case STEP_RANK:
    return fm_tasting_blind_rank_new (self->document, self->taster);
  case STEP_PAIR:
    return fm_tasting_blind_choice_new (self->document, self->taster, FM_TASTING_PREFERENCE);
  case STEP_TRIANGLE:
    return fm_tasting_blind_choice_new (self->document, self->taster, FM_TASTING_TRIANGLE);
  case STEP_END:
    return new_end_page (self);
  }
  g_return_val_if_reached (NULL);
}

static void
show_step (FmTastingBlindWindow *self)
{
  const Step *step = &g_array_index (self->steps, Step, self->step);
  g_autofree char *text =
      /* Translators: name of a taster, number of the step, number of steps */
      g_strdup_printf (_ ("%s, step %u of %u"), get_taster (self, self->taster)->name,
                       self->step + 1, self->steps->len);

  gtk_button_set_label (self->next_button, _ ("Next"));
  gtk_widget_set_visible (self->back_button, TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self->next_button), TRUE);
  fm_widget_set_label (self->step_label, text);
  put_page (self, new_page (self, step));
}

static void
taster_clicked_cb (FmTastingBlindWindow *self, GtkWidget *button)
{
  self->taster = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), TASTER));
  self->step = 0;
  list_steps (self);
  show_step (self);
}

static void
add_taster (FmTastingBlindWindow *self, GtkWidget *page, guint index)
{
  GtkWidget *button = gtk_button_new_with_label (get_taster (self, index)->name);

  g_object_set_data (G_OBJECT (button), TASTER, GUINT_TO_POINTER (index));
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (taster_clicked_cb), self);
  gtk_box_append (GTK_BOX (page), button);
}

static void
ask_who (FmTastingBlindWindow *self, const char *thanks)
{
  const gboolean none_waited = fm_tasting_n_sheets (get_tasting (self), FM_SHEET_WAITED_FOR) == 0;
  GtkWidget *page =
      fm_tasting_blind_page_new (none_waited ? _ ("No sheet is waited for") : _ ("Who tastes?"));

  if (thanks != NULL)
    gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (thanks, NULL));
  gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (self->tally, NULL));
  for (guint i = 0; i < get_tasting (self)->tasters->len; i++)
    if (get_taster (self, i)->sheet == FM_SHEET_WAITED_FOR)
      add_taster (self, page, i);
  g_array_set_size (self->steps, 0);
  fm_widget_set_label (self->step_label, "");
  gtk_widget_set_visible (self->back_button, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->next_button), FALSE);
  put_page (self, page);
}

static void
hand_in (FmTastingBlindWindow *self)
{
  /* Translators: name of a taster */
  g_autofree char *thanks = g_strdup_printf (_ ("Thank you, %s. Your sheet is in."),
                                             get_taster (self, self->taster)->name);

  fm_tasting_set_sheet (get_tasting (self), fm_clock_now_s (), self->taster, FM_SHEET_IN);
  fm_tasting_document_touch (self->document);
  fm_tasting_document_flush (self->document);
  ask_who (self, thanks);
}

/* The names go with the page: tasters meet none. */
static void
leave_record (FmTastingBlindWindow *self)
{
  if (self->reason != NULL) {
    fm_tasting_document_record (self->document, FM_TASTING_EVENT_UNCHECKED,
                                gtk_editable_get_text (GTK_EDITABLE (self->reason)));
    fm_tasting_document_flush (self->document);
  }
  self->reason = NULL;
  gtk_widget_set_sensitive (GTK_WIDGET (self->next_button), TRUE);
  ask_who (self, NULL);
}

static void
reason_changed_cb (FmTastingBlindWindow *self, GtkWidget *entry)
{
  gtk_widget_set_sensitive (GTK_WIDGET (self->next_button), fm_tasting_reason_is_given (entry));
}

static void
ask_reason (FmTastingBlindWindow *self, GtkWidget *page)
{
  gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (
                                      _ ("Why go on? The reason is kept with the tasting."), NULL));
  self->reason = fm_tasting_reason_entry_new (_ ("Reason for going on"));
  g_signal_connect_swapped (self->reason, "changed", G_CALLBACK (reason_changed_cb), self);
  gtk_box_append (GTK_BOX (page), self->reason);
  gtk_widget_set_sensitive (GTK_WIDGET (self->next_button), FALSE);
}

/* Names samples, never codes, to whoever leads the tasting. */
static void
show_record (FmTastingBlindWindow *self, const GPtrArray *cautions)
{
  GtkWidget *page = fm_tasting_blind_page_new (_ ("Before anybody tastes"));
  g_autofree char *lines = fm_tasting_cautions_lines (cautions);
  g_autofree char *figures = fm_tasting_cautions_figures (cautions);

  self->tally = fm_tasting_cautions_tally (cautions);
  gtk_box_append (GTK_BOX (page),
                  fm_tasting_blind_label_new (_ ("For the person who leads the tasting: what is on "
                                                 "record of the samples. Go on before tasters come "
                                                 "to the desk; they meet codes only."),
                                              NULL));
  gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (lines, NULL));
  gtk_box_append (GTK_BOX (page), fm_tasting_blind_label_new (figures, "dim-label"));
  if (!fm_tasting_cautions_are_on_record (cautions))
    ask_reason (self, page);
  gtk_widget_set_visible (self->back_button, FALSE);
  put_page (self, page);
}

static void
next_clicked_cb (FmTastingBlindWindow *self)
{
  if (self->steps->len == 0) {
    leave_record (self);
  } else if (self->step + 1 < self->steps->len) {
    self->step++;
    show_step (self);
  } else {
    hand_in (self);
  }
}

static void
back_clicked_cb (FmTastingBlindWindow *self)
{
  if (self->step == 0) {
    ask_who (self, NULL);
  } else {
    self->step--;
    show_step (self);
  }
}

static void
destroy_cb (gpointer window)
{
  gtk_window_destroy (window);
  g_object_unref (window);
}

static void
end_answered_cb (FmTastingBlindWindow *self, const char *response)
{
  if (!g_str_equal (response, "end"))
    return;
  fm_tasting_document_flush (self->document);
  fm_tasting_cover_end (self->hidden);
  /* The dialog that asked still looks at its parent after the answer. */
  g_idle_add_once (destroy_cb, g_object_ref (self));
}

static void
end_clicked_cb (FmTastingBlindWindow *self)
{
  GtkWidget *dialog = adw_message_dialog_new (
      GTK_WINDOW (self), _ ("End Blind Mode?"),
      _ ("Answers given so far are kept. The program's other windows come back: the person who "
         "leads the tasting should be at the desk."));

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Keep Tasting"),
                                    "end", _ ("_End Blind Mode"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "end",
                                              ADW_RESPONSE_DESTRUCTIVE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (end_answered_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static gboolean
close_request_cb (FmTastingBlindWindow *self)
{
  end_clicked_cb (self);
  return TRUE;
}

static gboolean
escape_pressed_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  end_clicked_cb (FM_TASTING_BLIND_WINDOW (widget));
  return TRUE;
}

static void
save_failed_cb (FmTastingBlindWindow *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->failure_label), TRUE);
}

static void
saved_cb (FmTastingBlindWindow *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->failure_label), FALSE);
}

static void
fm_tasting_blind_window_dispose (GObject *object)
{
  FmTastingBlindWindow *self = FM_TASTING_BLIND_WINDOW (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->hidden, g_ptr_array_unref);
  g_clear_pointer (&self->tally, g_free);
  g_clear_pointer (&self->steps, g_array_unref);
  G_OBJECT_CLASS (fm_tasting_blind_window_parent_class)->dispose (object);
}

static void
fm_tasting_blind_window_class_init (FmTastingBlindWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_blind_window_dispose;
  g_type_ensure (ADW_TYPE_CLAMP);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-blind-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTastingBlindWindow, clamp);
  gtk_widget_class_bind_template_child (widget_class, FmTastingBlindWindow, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmTastingBlindWindow, failure_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingBlindWindow, step_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingBlindWindow, end_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingBlindWindow, back_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingBlindWindow, next_button);
  gtk_widget_class_bind_template_callback (widget_class, back_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, next_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, end_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, close_request_cb);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_pressed_cb, NULL);
}

static void
fm_tasting_blind_window_init (FmTastingBlindWindow *self)
{
  self->steps = g_array_new (FALSE, FALSE, sizeof (Step));
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_blind_window_begin (FmTastingDocument *document, const GPtrArray *cautions)
{
  FmTastingBlindWindow *self = g_object_new (FM_TYPE_TASTING_BLIND_WINDOW, NULL);

  g_return_if_fail (fm_tasting_is_sealed (fm_tasting_document_get_tasting (document)));
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "save-failed", G_CALLBACK (save_failed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "saved", G_CALLBACK (saved_cb), self, G_CONNECT_SWAPPED);
  show_record (self, cautions);
  self->hidden = fm_tasting_cover_begin (GTK_WINDOW (self));
  gtk_window_fullscreen (GTK_WINDOW (self));
  gtk_window_present (GTK_WINDOW (self));
}
